#include "app/handout/handout_choices.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace steelyard::app {

namespace {

using publish::HandoutFormat;

template <typename Value>
HandoutWord word(const HandoutChoices& present, Value HandoutChoices::*member, Value value,
                 std::string text) {
    HandoutChoices chosen = present;
    chosen.*member = value;
    return {std::move(text), present.*member == value, chosen};
}

HandoutRow blueprint_row(const HandoutChoices& now,
                         const std::vector<publish::Blueprint>& blueprints) {
    HandoutRow row{"Sheet", {}};
    for (std::size_t i = 0; i < blueprints.size(); ++i) {
        HandoutWord one = word(now, &HandoutChoices::blueprint, i, blueprints[i].title);
        one.chosen = with_blueprint(now, blueprints, i);
        row.words.push_back(std::move(one));
    }
    return row;
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
    HandoutRow row{"Make", {}};
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
    return {blueprint_row(now, blueprints),
            {"Seed, or a code from a page", {{"another", false, next}}},
            version_row(now),
            {"Paper",
             {word(now, &HandoutChoices::paper, publish::PaperSize::a4, "A4"),
              word(now, &HandoutChoices::paper, publish::PaperSize::letter, "Letter")}},
            {"Type",
             {word(now, &HandoutChoices::large_print, false, "usual"),
              word(now, &HandoutChoices::large_print, true, "large print")}},
            {"Units",
             {word(now, &HandoutChoices::us_units, false, "SI"),
              word(now, &HandoutChoices::us_units, true, "US (lb, in)")}},
            format_row(now)};
}

HandoutChoices stepped(const HandoutChoices& choices,
                       const std::vector<publish::Blueprint>& blueprints, std::size_t row,
                       int step) {
    if (row == kSeedRow) {
        HandoutChoices next = choices;
        if (step > 0 || choices.seed > 0)
            next.seed += static_cast<std::uint64_t>(step); // modulo 2^64: a step back for -1
        return next;
    }
    const std::vector<HandoutRow> rows = rows_of(choices, blueprints);
    if (row >= kFormatRow || rows[row].words.empty())
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
    choices.paper = blueprints[blueprint].paper;
    choices.large_print = blueprints[blueprint].large_print;
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
    if (choices.blueprint >= blueprints.size())
        return tl::make_unexpected(std::string("There is no blueprint of a sheet."));
    publish::Blueprint blueprint = blueprints[choices.blueprint];
    blueprint.paper = choices.paper;
    blueprint.large_print = choices.large_print;
    blueprint.in_us_units = choices.us_units;
    return publish::make_worksheets(bank, blueprint, choices.seed, choices.versions, progress)
        .map_error([](const publish::PublishError& error) { return error.message; });
}

} // namespace steelyard::app
