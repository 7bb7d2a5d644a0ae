#include "problems/bank/answer_kinds.h"
#include "problems/bank/reading/family_reader.h"
#include "problems/draw/random.h"
#include "problems/question/question_code.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace steelyard::problems {

namespace {

using setup::Need;
using setup::TomlReader;

/// What the three points of a lever are called.
constexpr std::array<std::string_view, 3> kPoints{"axis", "load", "effort"};
constexpr std::array<const char*, 3> kClasses{"First class", "Second class", "Third class"};
constexpr std::array<const char*, 3> kMiddles{"the axis lies between effort and load",
                                              "the load lies between axis and effort",
                                              "the effort lies between axis and load"};

/// Position of the middle word of "axis load effort" in kPoints; empty when the words are not
/// the three points, each once.
std::optional<std::size_t> middle_of(const std::string& order) {
    std::array<std::size_t, 3> found{};
    std::array<bool, 3> seen{};
    std::size_t count = 0;
    for (std::size_t at = 0; at < order.size();) {
        const std::size_t begin = order.find_first_not_of(' ', at);
        if (begin == std::string::npos)
            break;
        at = std::min(order.find(' ', begin), order.size());
        const auto point = std::find(kPoints.begin(), kPoints.end(),
                                     std::string_view(order).substr(begin, at - begin));
        const auto index = static_cast<std::size_t>(std::distance(kPoints.begin(), point));
        if (point == kPoints.end() || seen[index] || count == 3)
            return std::nullopt;
        seen[index] = true;
        found[count++] = index;
    }
    if (count != 3)
        return std::nullopt;
    return found[1];
}

/// A tool or joint to classify: the class follows from the order of its points.
void read_classification(TomlReader& table, const std::string& prompt, Item& item) {
    const std::string order = table.text("order", Need::required).value_or("");
    const std::optional<std::size_t> middle = middle_of(order);
    if (!middle) {
        table.add_error("order", fmt::format("\"{}\"", order),
                        "\"axis\", \"load\" and \"effort\" in their order along the lever, such "
                        "as \"axis load effort\"");
        return;
    }
    const std::string this_thing = table.text("this", Need::required).value_or("");
    std::array<std::string, 3> points;
    for (std::size_t i = 0; i < 3; ++i)
        points[i] = table.text(kPoints[i], Need::required).value_or("");
    const std::size_t place = prompt.find("{this}");
    item.prompt =
        place == std::string::npos ? prompt : std::string(prompt).replace(place, 6, this_thing);
    item.keeps_order = true;
    // A learner who mistakes the part named "wrong_for" arrives at that class.
    const std::optional<std::string> trap = table.text("trap");
    const std::optional<std::string> trap_rule = table.text("trap_rule");
    static const std::vector<std::string_view> kTraps{"first", "second", "third"};
    for (std::size_t i = 0; i < 3; ++i) {
        Choice choice;
        choice.text = kClasses[i];
        if (i != *middle)
            choice.reason = fmt::format("{} would mean that {}.", kClasses[i], kMiddles[i]);
        if (trap && *trap == kTraps[i] && i != *middle)
            choice.wrong_rule = trap_rule.value_or("");
        item.choices.push_back(std::move(choice));
    }
    item.correct = {*middle};
    item.reason = fmt::format("Axis: {}. Effort: {}. Load: {}. {}: {}.", points[0], points[2],
                              points[1], kClasses[*middle], kMiddles[*middle]);
    const std::optional<std::string> more = table.text("reason", Need::required);
    item.reason += " " + more.value_or("");
}

Choice read_wrong_choice(TomlReader& table) {
    Choice choice;
    choice.text = table.text("text", Need::required).value_or("");
    choice.reason = table.text("reason").value_or("");
    choice.wrong_rule = table.text("rule").value_or("");
    table.finish();
    return choice;
}

/// A question written out: right and wrong choices.
void read_concept(TomlReader& table, Kind kind, Item& item) {
    item.prompt = table.text("prompt", Need::required).value_or("");
    std::vector<std::string> right;
    if (row_of(kind).picks == Picks::one)
        right.push_back(table.text("right", Need::required).value_or(""));
    else
        right = table.texts("right", Need::required).value_or(std::vector<std::string>{});
    for (std::string& text : right) {
        item.correct.push_back(item.choices.size());
        item.choices.push_back({std::move(text), "", ""});
    }
    for (TomlReader& wrong : table.tables("wrong", Need::required))
        item.choices.push_back(read_wrong_choice(wrong));
    item.reason = table.text("reason", Need::required).value_or("");
}

Item read_item(TomlReader& table, const Family& family, const std::string& prompt) {
    Item item;
    item.id = table.text("id", Need::required).value_or("");
    item.number = hash_of(item.id.data(), item.id.size()) % kItemNumbers;
    item.difficulty = static_cast<int>(
        table.integer("difficulty", Need::optional, 1, 5).value_or(family.base_difficulty));
    // Read where the US edition is made: a table says what the item is there.
    if (const setup::TomlNode* const us = table.node("us");
        us != nullptr && !std::holds_alternative<setup::TomlTable>(us->value))
        table.choice("us", {"same numbers"});
    if (table.has("order"))
        read_classification(table, prompt, item);
    else
        read_concept(table, family.kind, item);
    table.finish();
    return item;
}

} // namespace

tl::expected<Family, setup::InputErrors> read_items(const setup::TomlDocument& document) {
    setup::InputErrors errors;
    TomlReader table(document, errors);
    Family family;
    read_heading(table, family);
    std::vector<const AnswerKind*> kinds;
    std::vector<std::string_view> names;
    for (const AnswerKind& row : answer_kinds())
        if (row.can_be_written) {
            kinds.push_back(&row);
            names.push_back(row.name);
        }
    family.kind = kinds[table.choice("kind", names, Need::required).value_or(0)]->kind;
    const std::string prompt = table.text("prompt").value_or("Which class of lever is {this}?");
    family.ask.text = table.text("asked").value_or("the right answer");
    for (TomlReader& each : table.tables("item", Need::required)) {
        Item item = read_item(each, family, prompt);
        const auto same =
            std::find_if(family.items.begin(), family.items.end(),
                         [&](const Item& other) { return other.number == item.number; });
        if (same != family.items.end())
            each.add_error("id", fmt::format("\"{}\"", item.id),
                           fmt::format("an id that neither equals nor shares its number in "
                                       "question codes with \"{}\"",
                                       same->id),
                           "Choose another id.");
        family.items.push_back(std::move(item));
    }
    table.finish();
    if (!errors.empty())
        return tl::make_unexpected(std::move(errors));
    return family;
}

} // namespace steelyard::problems
