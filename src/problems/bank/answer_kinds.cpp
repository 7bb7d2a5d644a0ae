#include "problems/bank/answer_kinds.h"

#include <type_traits>

namespace steelyard::problems {

namespace {

template <Kind kind, typename Alternative>
constexpr bool kIs =
    std::is_same_v<std::variant_alternative_t<static_cast<std::size_t>(kind), Wanted>, Alternative>;

static_assert(kIs<Kind::numeric, NumberWanted> && kIs<Kind::single_choice, ChoiceWanted> &&
                  kIs<Kind::several_choices, SeveralWanted> && kIs<Kind::ordering, OrderWanted> &&
                  kIs<Kind::place, PlaceWanted> && kIs<Kind::change, ChangeWanted>,
              "each Kind stands for the alternative of Wanted in its place");

constexpr bool kYes = true;
constexpr bool kNo = false;

/// Columns of yes and no: asks a quantity, steps, choices, conditions, changes, place, written.
constexpr AnswerKind kKinds[] = {
    {Kind::numeric, "numeric", Picks::nothing, kYes, kYes, kNo, kNo, kNo, kNo, kNo, "number",
     "Type a number; any unit of the right kind will do.", "Your answer, a number with its unit",
     ""},
    {Kind::single_choice, "single", Picks::one, kNo, kNo, kYes, kYes, kNo, kNo, kYes, "one choice",
     "Choose one.", "Your answer, a letter", "Tick one."},
    {Kind::several_choices, "several", Picks::any, kNo, kNo, kYes, kYes, kNo, kNo, kYes,
     "several choices", "Choose every one that fits.", "Every letter that fits",
     "Tick every one that fits."},
    {Kind::ordering, "ordering", Picks::all_in_order, kYes, kNo, kYes, kNo, kNo, kNo, kNo, "order",
     "Choose them in order.", "All letters in order, largest first unless it says otherwise",
     "Write 1 beside the first, 2 beside the second, and so on."},
    {Kind::place, "place", Picks::one, kNo, kNo, kNo, kNo, kNo, kYes, kNo, "place",
     "Type the letter of the place.", "The letter of the place",
     "Circle one letter on the drawing."},
    {Kind::change, "change", Picks::one, kYes, kNo, kNo, kNo, kYes, kNo, kNo, "change",
     "Choose one.", "Your answer, a letter", "Tick one."},
};
static_assert(std::size(kKinds) == std::variant_size_v<Wanted>, "one row for each alternative");

} // namespace

const std::vector<AnswerKind>& answer_kinds() {
    static const std::vector<AnswerKind> kAll(std::begin(kKinds), std::end(kKinds));
    return kAll;
}

const AnswerKind& row_of(Kind kind) {
    return kKinds[static_cast<std::size_t>(kind)];
}

const AnswerKind& row_of(const Question& question) {
    return kKinds[question.wanted.index()];
}

const std::vector<std::string_view>& answer_kind_names() {
    static const std::vector<std::string_view> kNames = [] {
        std::vector<std::string_view> names;
        for (const AnswerKind& row : kKinds)
            names.push_back(row.name);
        return names;
    }();
    return kNames;
}

} // namespace steelyard::problems
