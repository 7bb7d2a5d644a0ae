#include "app/handout/handout_choices.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace steelyard::app {

namespace {

using publish::HandoutFormat;

/// Of a sheet that was put together and has no file yet.
constexpr const char* kUnsavedName = "sheet";

template <typename Value>
HandoutWord word(const HandoutChoices& present, Value HandoutChoices::*member, Value value,
                 std::string text) {
    HandoutChoices chosen = present;
    chosen.*member = value;
    return {std::move(text), present.*member == value, chosen};
}

HandoutRow blueprint_row(const HandoutChoices& now,
                         const std::vector<publish::Blueprint>& blueprints) {
    HandoutRow row{"Sheet", {}, RowKind::sheet};
    for (std::size_t i = 0; i < blueprints.size(); ++i) {
        HandoutWord one = word(now, &HandoutChoices::blueprint, i, blueprints[i].title);
        one.in_force = one.in_force && !now.own;
        one.chosen = with_blueprint(now, blueprints, i);
        row.words.push_back(std::move(one));
    }
    return row;
}

/// A word that changes the sheet that is put together.
template <typename Value>
HandoutWord own_word(const HandoutChoices& present, Value publish::SheetChoice::*member,
                     Value value, std::string text) {
    HandoutChoices chosen = present;
    (*chosen.own).*member = value;
    return {std::move(text), (*present.own).*member == value, chosen};
}

/// What else is chosen of a sheet that is put together, beside its topics.
void add_own_rows(const HandoutChoices& now, std::vector<HandoutRow>& rows) {
    using publish::SheetChoice;
    HandoutRow each{now.own->skills.empty() ? "Questions" : "Questions of each topic", {}};
    for (const std::int64_t count : {1, 2, 3, 4, 6, 10, 20})
        each.words.push_back(own_word(now, &SheetChoice::each, count, std::to_string(count)));
    HandoutRow level{"Level", {own_word(now, &SheetChoice::difficulty, {}, "any")}};
    for (int difficulty = 1; difficulty <= 5; ++difficulty)
        level.words.push_back(own_word(now, &SheetChoice::difficulty, std::optional(difficulty),
                                       std::to_string(difficulty)));
    using problems::Scene;
    rows.push_back(std::move(each));
    rows.push_back(std::move(level));
    rows.push_back(
        {"About",
         {own_word(now, &SheetChoice::about, {}, "anything"),
          own_word(now, &SheetChoice::about, std::optional(Scene::person), "people"),
          own_word(now, &SheetChoice::about, std::optional(Scene::thing), "things"),
          own_word(now, &SheetChoice::about, std::optional(Scene::words), "words alone")}});
    rows.push_back({"Families",
                    {own_word(now, &SheetChoice::with_own, false, "ours"),
                     own_word(now, &SheetChoice::with_own, true, "ours and yours")}});
}

HandoutRow version_row(const HandoutChoices& now) {
    HandoutRow row{"Versions", {}};
    for (int versions = 1; versions <= 6; ++versions)
        row.words.push_back(
            word(now, &HandoutChoices::versions, versions, std::to_string(versions)));
    return row;
}

HandoutRow format_row(const HandoutChoices& now) {
    constexpr std::pair<HandoutFormat, const char*> kFormats[] = {
        {HandoutFormat::pdf, "PDF"},           {HandoutFormat::html, "page for a browser"},
        {HandoutFormat::qti21, "QTI 2.1"},     {HandoutFormat::qti3, "QTI 3.0"},
        {HandoutFormat::csv, "CSV with keys"}, {HandoutFormat::cards, "flash cards"}};
    HandoutRow row{"Make", {}, RowKind::formats};
    for (const auto& [format, text] : kFormats)
        row.words.push_back(
            {text, std::find(now.formats.begin(), now.formats.end(), format) != now.formats.end(),
             toggled(now, format)});
    return row;
}

} // namespace

std::vector<HandoutRow> rows_of(const HandoutChoices& now,
                                const std::vector<publish::Blueprint>& blueprints) {
    HandoutChoices next = now;
    ++next.seed;
    std::vector<HandoutRow> rows{blueprint_row(now, blueprints)};
    if (now.own)
        add_own_rows(now, rows);
    rows.push_back({"Seed, or a code from a page", {{"another", false, next}}, RowKind::seed});
    rows.push_back(version_row(now));
    rows.push_back({"Paper",
                    {word(now, &HandoutChoices::paper, publish::PaperSize::a4, "A4"),
                     word(now, &HandoutChoices::paper, publish::PaperSize::letter, "Letter")},
                    RowKind::words,
                    true});
    rows.push_back({"Type",
                    {word(now, &HandoutChoices::large_print, false, "usual"),
                     word(now, &HandoutChoices::large_print, true, "large print")}});
    rows.push_back({"Units",
                    {word(now, &HandoutChoices::us_units, false, "SI"),
                     word(now, &HandoutChoices::us_units, true, "US (lb, in)")},
                    RowKind::words,
                    true});
    rows.push_back({"Question codes",
                    {word(now, &HandoutChoices::prints_codes, false, "not printed"),
                     word(now, &HandoutChoices::prints_codes, true, "printed")}});
    rows.push_back(format_row(now));
    return rows;
}

HandoutChoices stepped(const HandoutChoices& choices,
                       const std::vector<publish::Blueprint>& blueprints, std::size_t row,
                       int step) {
    const std::vector<HandoutRow> rows = rows_of(choices, blueprints);
    if (row >= rows.size())
        return choices;
    if (rows[row].kind == RowKind::seed) {
        HandoutChoices next = choices;
        if (step > 0 || choices.seed > 0)
            next.seed += static_cast<std::uint64_t>(step); // modulo 2^64: a step back for -1
        return next;
    }
    if (rows[row].kind == RowKind::formats || rows[row].words.empty())
        return choices;
    const auto& words = rows[row].words;
    const auto now = std::find_if(words.begin(), words.end(),
                                  [](const HandoutWord& one) { return one.in_force; });
    const std::ptrdiff_t at = now == words.end() ? 0 : now - words.begin() + step;
    return words[static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(at, 0, std::ssize(words) - 1))]
        .chosen;
}

HandoutChoices with_blueprint(HandoutChoices choices,
                              const std::vector<publish::Blueprint>& blueprints,
                              std::size_t blueprint) {
    if (blueprint >= blueprints.size())
        return choices;
    choices.blueprint = blueprint;
    choices.own.reset();
    choices.prints_codes = blueprints[blueprint].prints_codes;
    choices.paper = blueprints[blueprint].paper;
    choices.large_print = blueprints[blueprint].large_print;
    return choices;
}

HandoutChoices with_own_sheet(HandoutChoices choices,
                              const std::vector<publish::Blueprint>& blueprints,
                              const problems::Bank& bank) {
    std::optional<publish::SheetChoice> begun;
    if (choices.blueprint < blueprints.size())
        begun = publish::choice_of(blueprints[choices.blueprint], bank);
    choices.own = begun.value_or(publish::SheetChoice{});
    return choices;
}

HandoutChoices toggled(HandoutChoices choices, HandoutFormat format) {
    const auto found = std::find(choices.formats.begin(), choices.formats.end(), format);
    if (found == choices.formats.end())
        choices.formats.push_back(format);
    else
        choices.formats.erase(found);
    std::sort(choices.formats.begin(), choices.formats.end());
    return choices;
}

tl::expected<HandoutChoices, std::string>
read_seed(const std::string& typed, const HandoutChoices& choices,
          const std::vector<publish::Blueprint>& blueprints) {
    HandoutChoices read = choices;
    const char* const end = typed.data() + typed.size();
    const auto number = std::from_chars(typed.data(), end, read.seed);
    if (number.ec == std::errc() && number.ptr == end)
        return read;
    const auto code = publish::read_sheet_code(typed);
    if (!code)
        return tl::make_unexpected(
            std::string("Type a whole number, or a code such as boathouse-42-B."));
    const auto named =
        std::find_if(blueprints.begin(), blueprints.end(),
                     [&](const publish::Blueprint& one) { return one.name == code->blueprint; });
    if (named == blueprints.end())
        return tl::make_unexpected(fmt::format("There is no sheet \"{}\" here.", code->blueprint));
    read.blueprint = static_cast<std::size_t>(named - blueprints.begin());
    read.own.reset();
    read.seed = code->seed;
    read.us_units = code->us_units;
    // A set of one has no letter; the letter A says that there was a B.
    read.versions = code->version < 0 ? 1 : std::max(2, code->version + 1);
    return read;
}

std::size_t files_of(const HandoutChoices& choices) {
    std::size_t files = 0;
    for (const HandoutFormat format : choices.formats)
        files += format == HandoutFormat::pdf || format == HandoutFormat::html ? 2 : 1;
    return files * static_cast<std::size_t>(choices.versions);
}

tl::expected<std::vector<publish::Worksheet>, std::string>
sheets_of(const HandoutChoices& choices, const std::vector<publish::Blueprint>& blueprints,
          const problems::Bank& bank, const publish::Progress& progress) {
    if (!choices.own && choices.blueprint >= blueprints.size())
        return tl::make_unexpected(std::string("There is no blueprint of a sheet."));
    publish::Blueprint blueprint = choices.own
                                       ? publish::blueprint_of(*choices.own, bank, kUnsavedName)
                                       : blueprints[choices.blueprint];
    blueprint.prints_codes = choices.prints_codes;
    blueprint.paper = choices.paper;
    blueprint.large_print = choices.large_print;
    blueprint.in_us_units = choices.us_units;
    return publish::make_worksheets(bank, blueprint, choices.seed, choices.versions, progress)
        .map_error([](const publish::PublishError& error) { return error.message; });
}

} // namespace steelyard::app
