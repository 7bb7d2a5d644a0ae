#include "lesson/lesson_change_read.h"

#include "lesson/lesson_change.h"
#include "lesson/lesson_move.h"
#include "setup/lever/direction.h"

#include <fmt/format.h>

namespace steelyard::lesson {
namespace {

constexpr std::size_t kMostShown = 3;

constexpr std::string_view kChangeKeys[] = {"at",    "mass", "force",   "torque", "direction",
                                            "angle", "up",   "forward", "right",  "slack_length"};

/// "up" and the like stand for their angle.
std::optional<setup::WrittenQuantity> read_direction_word(setup::TomlReader& table,
                                                          std::string_view key) {
    const setup::TomlNode* node = table.node(key);
    const auto* word = std::get_if<std::string>(&node->value);
    const auto direction_rad = word ? setup::direction_of_word(*word) : std::nullopt;
    if (!direction_rad)
        return std::nullopt;
    return setup::WrittenQuantity{*direction_rad, *word, false, node->line, node->column};
}

} // namespace

LessonChange read_change(setup::TomlReader& table) {
    LessonChange change;
    change.line = table.line();
    change.part = table.text("part", setup::Need::required).value_or("");
    for (const std::string_view key : kChangeKeys) {
        if (!table.has(key)) {
            table.node(key);
            continue;
        }
        auto written = key == "direction" ? read_direction_word(table, key) : std::nullopt;
        if (!written)
            written = table.quantity(key, dimension_of(key), setup::Need::optional, key == "force");
        if (written)
            change.values.push_back({std::string(key), *std::move(written)});
    }
    if (change.values.empty())
        table.add_error("part", "a change that changes nothing", "a value, such as at = \"45 cm\"");
    table.finish();
    return change;
}

std::optional<LessonMove> read_move(setup::TomlReader& step) {
    auto table = step.table("move");
    if (!table)
        return std::nullopt;
    LessonMove move;
    move.line = table->line();
    move.part = table->text("part", setup::Need::required).value_or("");
    move.key = table->text("key").value_or("");
    const bool along_path = move.part == kProgress;
    if (along_path == !move.key.empty() && table->has("part"))
        table->add_error("key", along_path ? "a key beside \"progress\"" : "no key",
                         along_path ? "\"progress\" alone" : "a key of this part, such as \"at\"");
    const setup::Dimension dimension =
        along_path ? setup::Dimension::number : dimension_of(move.key);
    const auto end = [&](std::string_view key) {
        return table->quantity(key, dimension, setup::Need::required, move.key == "force")
            .value_or(setup::WrittenQuantity{});
    };
    move.from = end("from");
    move.to = end("to");
    move.shows = table->texts("shows", setup::Need::required).value_or(std::vector<std::string>{});
    if (table->has("shows") && (move.shows.empty() || move.shows.size() > kMostShown))
        table->add_error("shows", fmt::format("{} quantities", move.shows.size()),
                         "one to three quantities");
    table->finish();
    return move;
}

} // namespace steelyard::lesson
