#include "problems/bank/us_edition.h"

#include "mechanics/portable.h"
#include "problems/bank/reading/draw_reader.h"
#include "problems/bank/us_texts.h"

#include <algorithm>
#include <functional>

namespace steelyard::problems {

namespace {

using setup::TomlArray;
using setup::TomlNode;
using setup::TomlTable;

/// The longest length that is told in inches [m].
constexpr double kLongestInInches_m = 2.5;

/// The entry of a table, or null; `Node` is TomlNode or const.
template <typename Node> Node* find_entry(Node& table, std::string_view key) {
    auto* const entries = std::get_if<TomlTable>(&table.value);
    if (!entries)
        return nullptr;
    const auto found = std::find_if(entries->entries.begin(), entries->entries.end(),
                                    [&](const TomlNode& entry) { return entry.key == key; });
    return found == entries->entries.end() ? nullptr : &*found;
}

using Turn = std::function<std::string(const std::string&)>;

void turn_text(TomlNode* node, const Turn& turn) {
    if (node != nullptr)
        if (auto* const text = std::get_if<std::string>(&node->value))
            *text = turn(*text);
}

/// Every text of a table or array, however deep.
void turn_all(TomlNode* node, const Turn& turn) {
    if (node == nullptr)
        return;
    turn_text(node, turn);
    if (auto* const table = std::get_if<TomlTable>(&node->value))
        for (TomlNode& entry : table->entries)
            turn_all(&entry, turn);
    if (auto* const array = std::get_if<TomlArray>(&node->value))
        for (TomlNode& item : array->items)
            turn_all(&item, turn);
}

/// Of every table of an array, or of the entries of a table, the texts under some keys.
void turn_keys(TomlNode* list, const std::vector<std::string_view>& keys, const Turn& turn) {
    if (list == nullptr)
        return;
    const auto each = [&](TomlNode& one) {
        for (const std::string_view key : keys)
            turn_all(find_entry(one, key), turn);
    };
    if (auto* const array = std::get_if<TomlArray>(&list->value))
        std::for_each(array->items.begin(), array->items.end(), each);
    if (auto* const table = std::get_if<TomlTable>(&list->value))
        std::for_each(table->entries.begin(), table->entries.end(), each);
}

/// Lays what the author wrote for the US edition over it: tables are joined, all else is replaced.
void lay_over(TomlNode& base, const TomlNode& over) {
    const auto* const entries = std::get_if<TomlTable>(&over.value);
    auto* const into = std::get_if<TomlTable>(&base.value);
    if (!entries || !into) {
        base.value = over.value;
        return;
    }
    for (const TomlNode& entry : entries->entries)
        if (TomlNode* const known = find_entry(base, entry.key))
            lay_over(*known, entry);
        else
            into->entries.push_back(entry);
}

void set_text(TomlNode& table, const std::string& key, const std::string& text) {
    TomlNode node;
    node.key = key;
    node.line = table.line;
    node.column = table.column;
    node.value = text;
    if (TomlNode* const known = find_entry(table, key))
        known->value = node.value;
    else
        std::get<TomlTable>(table.value).entries.push_back(std::move(node));
}

/// Whether a quantity is told in joules, whatever stands for them: feet go with foot-pounds.
bool names_work(const TomlNode& node) {
    const auto any = [](const std::vector<TomlNode>& nodes) {
        return std::any_of(nodes.begin(), nodes.end(), names_work);
    };
    if (const auto* const text = std::get_if<std::string>(&node.value))
        return node.key == "unit" && *text == "J";
    if (const auto* const table = std::get_if<TomlTable>(&node.value))
        return any(table->entries);
    if (const auto* const array = std::get_if<TomlArray>(&node.value))
        return any(array->items);
    return false;
}

/// Whether the family's lengths are too long for inches, or work is asked.
bool is_in_feet(const TomlNode& root) {
    bool feet = false;
    const auto look = [&](const TomlNode& node) {
        const auto* const text = std::get_if<std::string>(&node.value);
        const auto written =
            text ? read_draw(*text, setup::Dimension::number) : tl::unexpected(std::string());
        if (!written || !written->unit || written->unit->dimension != setup::Dimension::length)
            return;
        const Draw& draw = written->draw;
        std::int64_t most = draw.first + draw.step * (draw.count - 1);
        for (const std::int64_t whole : draw.list)
            most = std::max(most, whole);
        const double shown =
            static_cast<double>(most) / mechanics::portable::pow(10.0, draw.decimals);
        feet = feet || setup::value_in_SI(shown, *written->unit) > kLongestInInches_m;
    };
    if (const TomlNode* const draws = find_entry(root, "draw"))
        if (const auto* const table = std::get_if<TomlTable>(&draws->value))
            std::for_each(table->entries.begin(), table->entries.end(), look);
    return feet || names_work(root);
}

/// Computed quantities: their units, and the grid that a muscle's arm is rounded to.
void turn_computed(TomlNode* computed, const UsTexts& us) {
    const Turn unit = [&](const std::string& text) { return us.unit(text); };
    const Turn said = [&](const std::string& text) { return us.said(text); };
    turn_keys(computed, {"unit"}, unit);
    turn_keys(computed, {"to", "words"}, said);
    turn_keys(computed, {"is"}, [&](const std::string& text) { return us.size_alone(text); });
}

/// Lays a node's `us` table over it, and takes it away.
void lay_own_over(TomlNode& node) {
    const TomlNode over = *find_entry(node, "us");
    auto& entries = std::get<TomlTable>(node.value).entries;
    entries.erase(std::find_if(entries.begin(), entries.end(),
                               [](const TomlNode& entry) { return entry.key == "us"; }));
    lay_over(node, over);
}

/// The US edition of a written family: its marked items in other units.
void turn_items(TomlNode& items) {
    const UsTexts texts(true);
    if (auto* const array = std::get_if<TomlArray>(&items.value))
        for (TomlNode& item : array->items) {
            if (find_entry(item, "us") == nullptr)
                continue;
            for (const char* const key : {"prompt", "right", "wrong", "reason"})
                turn_all(find_entry(item, key),
                         [&](const std::string& text) { return texts.same_numbers(text); });
            if (std::holds_alternative<TomlTable>(find_entry(item, "us")->value))
                lay_own_over(item);
        }
}

} // namespace

bool has_us_edition(const setup::TomlDocument& document) {
    if (const TomlNode* const items = find_entry(document.root, "item")) {
        const auto* const array = std::get_if<TomlArray>(&items->value);
        return array != nullptr &&
               std::any_of(array->items.begin(), array->items.end(),
                           [](const TomlNode& item) { return find_entry(item, "us") != nullptr; });
    }
    const TomlNode* const system = find_entry(document.root, "system");
    if (system == nullptr)
        return true;
    const auto* const text = std::get_if<std::string>(&system->value);
    return text != nullptr && *text == "SI";
}

setup::TomlDocument us_edition(const setup::TomlDocument& si) {
    setup::TomlDocument us = si;
    TomlNode& root = us.root;
    const bool in_feet = is_in_feet(root);
    const UsTexts texts(in_feet);
    const Turn unit = [&](const std::string& text) { return texts.unit(text); };
    const Turn said = [&](const std::string& text) { return texts.said(text); };
    set_text(root, "system", "US");
    set_text(root, "lengths", in_feet ? "ft" : "in");
    if (TomlNode* const items = find_entry(root, "item")) {
        turn_items(*items);
        return us;
    }
    if (find_entry(root, "gravity") == nullptr)
        set_text(root, "gravity", "1 lbf/lb");
    for (const char* const key : {"prompt", "reason", "title"})
        turn_text(find_entry(root, key), said);
    turn_all(find_entry(root, "scene"), said);
    turn_all(find_entry(root, "draw"), [&](const std::string& text) { return texts.draw(text); });
    turn_computed(find_entry(root, "let"), texts);
    turn_computed(find_entry(root, "then"), texts);
    turn_all(find_entry(root, "show"), unit);
    if (TomlNode* const ask = find_entry(root, "ask")) {
        turn_text(find_entry(*ask, "unit"), unit);
        turn_text(find_entry(*ask, "text"), said);
    }
    turn_keys(find_entry(root, "step"), {"says"}, said);
    turn_keys(find_entry(root, "choice"), {"text", "reason", "sets"}, said);
    turn_keys(find_entry(root, "change"), {"says", "because", "sets"}, said);
    if (TomlNode* const place = find_entry(root, "place"))
        turn_keys(find_entry(*place, "spot"), {"reason"}, said);
    if (TomlNode* const wrong = find_entry(root, "wrong")) {
        const Turn sizes = [&](const std::string& text) { return texts.unit_sizes(text); };
        for (TomlNode& rule : std::get<TomlTable>(wrong->value).entries)
            turn_text(&rule, sizes);
        turn_keys(wrong, {"gives"}, sizes);
        turn_keys(wrong, {"feedback"}, said);
    }
    if (find_entry(root, "us") != nullptr)
        lay_own_over(root);
    return us;
}

} // namespace steelyard::problems
