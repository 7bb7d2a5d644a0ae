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

constexpr AnswerKind kKinds[] = {
    // kind, name, asks_quantity, steps, choices, conditions, changes, place, can_be_written
    {Kind::numeric, "numeric", true, true, false, false, false, false, false},
    {Kind::single_choice, "single", false, false, true, true, false, false, true},
    {Kind::several_choices, "several", false, false, true, true, false, false, true},
    {Kind::ordering, "ordering", true, false, true, false, false, false, false},
    {Kind::place, "place", false, false, false, false, false, true, false},
    {Kind::change, "change", true, false, false, false, true, false, false},
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

const std::vector<std::string_view>& answer_kind_names() {
    static const std::vector<std::string_view> kNames = [] {
        std::vector<std::string_view> names;
        for (const AnswerKind& row : kKinds)
            names.push_back(row.name);
        return names;
    }();
    return kNames;
}

Kind kind_of(const Question& question) {
    return kKinds[question.wanted.index()].kind;
}

} // namespace steelyard::problems
