#include "problems/bank/bank.h"

#include "problems/bank/bank_links.h"
#include "problems/bank/reading/family_reader.h"
#include "problems/bank/us_edition.h"
#include "problems/question/question_code.h"
#include "setup/files/data_folder.h"
#include "setup/muscle/muscle_file.h"
#include "setup/toml/toml_reader.h"

#include <fmt/core.h>

#include <algorithm>
#include <functional>
#include <system_error>

namespace steelyard::problems {

namespace {

using setup::Need;
using setup::TomlReader;

constexpr const char* kSkillsFile = "skills.toml";
constexpr const char* kWrongRulesFile = "wrong_rules.toml";

template <typename Each> const Each* find_by_id(const std::vector<Each>& all, std::string_view id) {
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Each& each) { return each.id == id; });
    return found == all.end() ? nullptr : &*found;
}

void append(std::vector<setup::InputError>& faults, setup::InputErrors errors) {
    std::move(errors.begin(), errors.end(), std::back_inserter(faults));
}

/// Reads a file whose root holds an array of tables of one kind.
void read_list(const std::filesystem::path& path, std::string_view key, Bank& bank,
               const std::function<void(TomlReader&)>& read_one) {
    const auto document = setup::read_toml_file(path);
    if (!document) {
        bank.faults.push_back(document.error());
        return;
    }
    setup::InputErrors errors;
    TomlReader table(*document, errors);
    for (TomlReader& one : table.tables(key, Need::required)) {
        read_one(one);
        one.finish();
    }
    table.finish();
    append(bank.faults, std::move(errors));
}

void read_skill(TomlReader& table, Bank& bank) {
    Skill skill;
    skill.id = table.text("id", Need::required).value_or("");
    skill.title = table.short_text("title", Need::required).value_or("");
    skill.about = table.text("about", Need::required).value_or("");
    skill.needs = table.texts("needs").value_or(std::vector<std::string>{});
    // Prerequisites stand first, so that the map can have no circle.
    for (const std::string& need : skill.needs) {
        const Skill* const before = bank.find_skill(need);
        if (!before)
            table.add_error("needs", fmt::format("\"{}\"", need),
                            "the id of a skill that stands above this one");
        else
            skill.level = std::max(skill.level, before->level + 1);
    }
    if (bank.find_skill(skill.id))
        table.add_error("id", fmt::format("\"{}\" for the second time", skill.id), "a new id");
    else if (!skill.id.empty())
        bank.skills.push_back(std::move(skill));
}

void read_wrong_rule(TomlReader& table, Bank& bank) {
    WrongRule rule;
    rule.id = table.text("id", Need::required).value_or("");
    rule.title = table.short_text("title", Need::required).value_or("");
    rule.feedback = table.text("feedback", Need::required).value_or("");
    rule.ask = table.text("ask", Need::required).value_or("");
    rule.parts_at = table.texts("parts_at").value_or(std::vector<std::string>{});
    rule.draws_wrong = table.text("draws_wrong").value_or("");
    rule.draws_right = table.text("draws_right").value_or("");
    rule.only_in_si = table.boolean("only_in_si").value_or(false);
    if (bank.find_wrong_rule(rule.id))
        table.add_error("id", fmt::format("\"{}\" for the second time", rule.id), "a new id");
    else if (!rule.id.empty())
        bank.wrong_rules.push_back(std::move(rule));
}

/// Files of families: all of a folder but those beside them that hold skills and wrong rules.
std::vector<std::filesystem::path> toml_files(const std::filesystem::path& directory) {
    std::vector<std::filesystem::path> files;
    std::error_code failed;
    for (std::filesystem::directory_iterator at(directory, failed), end; !failed && at != end;
         at.increment(failed))
        if (at->path().extension() == ".toml" && at->path().filename() != kSkillsFile &&
            at->path().filename() != kWrongRulesFile)
            files.push_back(at->path());
    std::sort(files.begin(), files.end());
    return files;
}

using ReadFamily =
    std::function<tl::expected<Family, setup::InputErrors>(const setup::TomlDocument&)>;

/// Mistakes that only somebody with newtons can make have no place in a US edition.
void drop_si_rules(const Bank& bank, Family& family) {
    const auto is_si = [&](const WrongPlan& plan) {
        const WrongRule* const rule = bank.find_wrong_rule(plan.rule);
        return rule != nullptr && rule->only_in_si;
    };
    family.wrong.erase(std::remove_if(family.wrong.begin(), family.wrong.end(), is_si),
                       family.wrong.end());
}

/// Where families go: among those of the program, or of the person.
struct Shelf {
    bool is_own = false;
    std::vector<setup::InputError>* faults = nullptr;

    /// A family as it stands on this shelf.
    Family placed(Family family) const {
        if (is_own) {
            family.is_own = true;
            family.id.insert(0, kOwnPrefix);
            family.number = family_number(family.id);
        }
        return family;
    }
};

/// The US edition of a family that was read without fault.
void read_us_edition(const setup::TomlDocument& document, const ReadFamily& read,
                     const Shelf& shelf, Bank& bank) {
    tl::expected<Family, setup::InputErrors> family = read(us_edition(document));
    if (!family) {
        for (setup::InputError& error : family.error())
            error.mend += " This is about its US edition: say in a [us] table what it is there.";
        append(*shelf.faults, std::move(family.error()));
        return;
    }
    drop_si_rules(bank, *family);
    bank.us_editions.push_back(shelf.placed(std::move(*family)));
}

/// What comes with the program; a part that cannot be read is a fault.
Published shipped_data(std::vector<setup::InputError>& faults) {
    Published published;
    if (auto tables = setup::shipped_segment_tables())
        published.tables = std::move(*tables);
    else
        faults.push_back(tables.error());
    if (auto muscles = setup::shipped_muscles())
        published.muscles = std::move(*muscles);
    else
        faults.push_back(muscles.error());
    return published;
}

std::string in_small_letters(std::string text) {
    for (char& c : text)
        if (c >= 'A' && c <= 'Z')
            c = static_cast<char>(c - 'A' + 'a');
    return text;
}

/// The names of each term of the shipped glossary; letters such as R belong to choices.
void read_synonyms(Bank& bank) {
    const auto document =
        setup::read_toml_file(setup::data_folder() / "assets" / "pages" / "glossary.toml");
    if (!document)
        return; // its own reader tells what is wrong
    setup::InputErrors untold;
    TomlReader table(*document, untold);
    for (TomlReader& term : table.tables("term")) {
        std::vector<std::string> names{in_small_letters(term.text("name").value_or(""))};
        for (const char* const key : {"also", "typed"})
            for (std::string& name : term.texts(key).value_or(std::vector<std::string>{}))
                if (name.size() > 1)
                    names.push_back(in_small_letters(std::move(name)));
        if (names.size() > 1)
            bank.synonyms.push_back(std::move(names));
    }
}

void read_one_family(const setup::TomlDocument& document, const ReadFamily& read,
                     const Shelf& shelf, Bank& bank) {
    tl::expected<Family, setup::InputErrors> read_family = read(document);
    if (!read_family)
        return append(*shelf.faults, std::move(read_family.error()));
    Family family = shelf.placed(std::move(*read_family));
    std::vector<setup::InputError> faults = faults_of_links(bank, family);
    if (faults.empty()) {
        bank.families.push_back(std::move(family));
        if (has_us_edition(document))
            read_us_edition(document, read, shelf, bank);
    }
    append(*shelf.faults, std::move(faults));
}

void read_families(const std::filesystem::path& directory, const ReadFamily& read,
                   const Shelf& shelf, Bank& bank) {
    for (const std::filesystem::path& file : toml_files(directory))
        if (const auto document = setup::read_toml_file(file))
            read_one_family(*document, read, shelf, bank);
        else
            shelf.faults->push_back(document.error());
}

/// Whether a file holds questions that are written out.
bool has_items(const setup::TomlDocument& document) {
    setup::InputErrors untold;
    return TomlReader(document, untold).has("item");
}

void sort_by_id(Bank& bank) {
    for (std::vector<Family>* const families : {&bank.families, &bank.us_editions})
        std::sort(families->begin(), families->end(),
                  [](const Family& a, const Family& b) { return a.id < b.id; });
}

} // namespace

const Skill* Bank::find_skill(std::string_view id) const {
    return find_by_id(skills, id);
}

const WrongRule* Bank::find_wrong_rule(std::string_view id) const {
    return find_by_id(wrong_rules, id);
}

const Family* Bank::find_family(std::string_view id) const {
    return find_by_id(families, id);
}

const Family* Bank::find_family_by_number(std::uint64_t number) const {
    const auto found = std::find_if(families.begin(), families.end(),
                                    [&](const Family& family) { return family.number == number; });
    return found == families.end() ? nullptr : &*found;
}

const Family& Bank::in_units(const Family& family, setup::UnitSystem units) const {
    if (units == family.units())
        return family;
    const std::vector<Family>& others = units == setup::UnitSystem::us ? us_editions : families;
    const Family* const other = find_by_id(others, family.id);
    return other != nullptr ? *other : family;
}

bool Bank::suits(const Family& family, setup::UnitSystem units) {
    return units == setup::UnitSystem::us || family.system != "US" || family.is_us_edition;
}

Bank load_bank(const std::filesystem::path& directory) {
    Bank bank;
    read_list(directory / kSkillsFile, "skill", bank,
              [&](TomlReader& table) { read_skill(table, bank); });
    read_list(directory / kWrongRulesFile, "rule", bank,
              [&](TomlReader& table) { read_wrong_rule(table, bank); });
    read_synonyms(bank);
    const Published published = shipped_data(bank.faults);
    const Shelf shelf{false, &bank.faults};
    read_families(
        directory / "families",
        [&](const setup::TomlDocument& document) { return read_family(document, published); },
        shelf, bank);
    read_families(directory / "items", read_items, shelf, bank);
    sort_by_id(bank);
    return bank;
}

void add_own_families(Bank& bank, const std::filesystem::path& directory) {
    std::error_code failed;
    if (directory.empty() || !std::filesystem::is_directory(directory, failed))
        return;
    const Published published = shipped_data(bank.own_faults);
    const auto read = [&](const setup::TomlDocument& document) {
        return has_items(document) ? read_items(document) : read_family(document, published);
    };
    const Shelf shelf{true, &bank.own_faults};
    read_families(directory, read, shelf, bank);
    read_families(directory / "families", read, shelf, bank);
    read_families(directory / "items", read, shelf, bank);
    sort_by_id(bank);
}

std::filesystem::path own_bank_folder() {
    const std::filesystem::path own = setup::own_folder();
    return own.empty() ? own : own / "question_bank";
}

} // namespace steelyard::problems
