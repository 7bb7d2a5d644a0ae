#include "cli/verbs/list_command.h"

#include "cli/options/checked_options.h"
#include "cli/options/json_options.h"
#include "cli/options/question_options.h"
#include "lesson/glossary.h"
#include "lesson/lesson.h"
#include "publish/sheets/blueprint.h"
#include "setup/files/data_folder.h"
#include "setup/setup.h"
#include "setup/units/unit_table.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <memory>
#include <ostream>

namespace steelyard::cli {
namespace {

/// One line of a list.
struct Listed {
    std::string name; ///< as the verbs take it
    std::string title;
};
using Lines = tl::expected<std::vector<Listed>, setup::InputError>;

/// A file's name without its ending.
std::string name_of(const std::filesystem::path& path, std::string_view ending) {
    const std::string file = path.filename().string();
    return file.substr(0, file.size() - ending.size());
}

/// The setups of a kind in a folder; those that cannot be read too.
template <typename Kind> Lines setups_in(const std::filesystem::path& folder) {
    return setup::list_setups(folder).map([](const std::vector<setup::SetupListing>& all) {
        std::vector<Listed> lines;
        for (const setup::SetupListing& one : all) {
            if (one.setup && !std::holds_alternative<Kind>(*one.setup))
                continue;
            lines.push_back({name_of(one.path, setup::kSetupEnding),
                             one.setup
                                 ? std::visit([](const auto& x) { return x.head.name; }, *one.setup)
                                 : "cannot be read"});
        }
        return lines;
    });
}

/// The person's own, which the verbs look for first, and those that come with the program.
template <typename Kind> Lines own_and_shipped(const std::filesystem::path& shipped) {
    const std::filesystem::path own = setup::own_folder();
    std::error_code failed;
    const bool has_own = !own.empty() && std::filesystem::is_directory(own / "setups", failed);
    Lines lines = has_own ? setups_in<Kind>(own / "setups") : Lines(std::vector<Listed>());
    if (!lines)
        return lines;
    return setups_in<Kind>(shipped).map([&](const std::vector<Listed>& more) {
        lines->insert(lines->end(), more.begin(), more.end());
        return *lines;
    });
}

Lines levers() {
    return own_and_shipped<setup::LeverSetup>(setup::data_folder() / "assets" / "setups");
}

Lines exercises() {
    return own_and_shipped<setup::BodySetup>(setup::data_folder() / "assets" / "setups" / "body");
}

Lines lessons() {
    return lesson::list_lessons(setup::data_folder() / "assets" / "lessons")
        .map([](const std::vector<lesson::LessonListing>& all) {
            std::vector<Listed> lines;
            for (const lesson::LessonListing& one : all)
                lines.push_back({name_of(one.path, lesson::kLessonEnding),
                                 one.lesson ? one.lesson->head.name : "cannot be read"});
            return lines;
        });
}

Lines blueprints() {
    std::vector<Listed> lines;
    for (const auto& one :
         publish::list_blueprints(setup::data_folder() / "assets" / "blueprints")) {
        if (!one)
            return tl::make_unexpected(one.error());
        lines.push_back({one->name, one->title});
    }
    return lines;
}

problems::Bank shipped_bank() {
    return problems::load_bank(setup::data_folder() / "question_bank");
}

Lines skills() {
    std::vector<Listed> lines;
    for (const problems::Skill& skill : shipped_bank().skills)
        lines.push_back({skill.id, skill.title});
    return lines;
}

Lines families() {
    std::vector<Listed> lines;
    for (const problems::Family& family : shipped_bank().families)
        lines.push_back({family.id, family.title});
    return lines;
}

Lines terms() {
    return lesson::read_glossary(setup::data_folder() / "assets" / "pages" / "glossary.toml")
        .map([](const std::vector<lesson::Term>& all) {
            std::vector<Listed> lines;
            for (const lesson::Term& term : all)
                lines.push_back({term.name, term.says});
            return lines;
        });
}

Lines units() {
    std::vector<Listed> lines;
    for (const setup::Unit& unit : setup::all_units())
        if (!unit.symbol.empty())
            lines.push_back(
                {std::string(unit.symbol), std::string(setup::name_of(unit.dimension))});
    return lines;
}

struct Kind {
    const char* word;
    Lines (*lines)();
};
constexpr std::array kKinds{
    Kind{"setups", &levers},     Kind{"exercises", &exercises}, Kind{"lessons", &lessons},
    Kind{"families", &families}, Kind{"skills", &skills},       Kind{"blueprints", &blueprints},
    Kind{"units", &units},       Kind{"terms", &terms},
};

struct ListOptions {
    std::string what;
    WantedRows rows;
};

/// How many signs a text in UTF-8 has.
std::size_t signs_in(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
    }));
}

void print(const std::vector<Listed>& lines, const Streams& streams) {
    std::size_t width = 0;
    for (const Listed& line : lines)
        width = std::max(width, signs_in(line.name));
    for (const Listed& line : lines)
        streams.out << line.name << std::string(width - signs_in(line.name) + 2, ' ') << line.title
                    << '\n';
}

ExitStatus run(const ListOptions& options, const Streams& streams) {
    const auto* kind = std::find_if(kKinds.begin(), kKinds.end(),
                                    [&](const Kind& one) { return one.word == options.what; });
    const Lines lines = kind->lines();
    if (!lines) {
        streams.err << to_text(lines.error()) << '\n';
        return ExitStatus::failed;
    }
    if (!options.rows) {
        print(*lines, streams);
        return ExitStatus::ok;
    }
    JsonRows rows(streams.out, "list", options.what, *options.rows);
    for (const Listed& line : *lines)
        rows.add({{"name", line.name}, {"title", line.title}});
    rows.finish();
    return ExitStatus::ok;
}

Work add_list_options(CLI::App& command) {
    const auto options = std::make_shared<ListOptions>();
    std::vector<std::string> words;
    for (const Kind& kind : kKinds)
        words.emplace_back(kind.word);
    only_words(command.add_option("WHAT", options->what, "what to list"), words)->required();
    add_row_options(command, options->rows);
    return [options](const Streams& streams) { return run(*options, streams); };
}

} // namespace

Verb list_verb() {
    return {"list", "list what can be called by its name: yours, and what comes with the program",
            "  steelyard list exercises\n"
            "  steelyard list skills --json",
            &add_list_options};
}

} // namespace steelyard::cli
