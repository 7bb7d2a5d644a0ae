#include "fuzz/targets.h"

#include "learner/record/exchange/exchange.h"
#include "lesson/lesson.h"
#include "problems/bank/bank.h"
#include "problems/bank/published.h"
#include "problems/bank/reading/family_reader.h"
#include "problems/marking/marking.h"
#include "problems/question/generator.h"
#include "publish/sheets/blueprint.h"
#include "setup/body/segment_table_file.h"
#include "setup/muscle/muscle_file.h"
#include "setup/setup.h"
#include "setup/units/units.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <sstream>
#include <string>
#include <unistd.h>

namespace steelyard::fuzz {

namespace {

namespace fs = std::filesystem;

/// Holds in every build: an assert would vanish from a release.
void must(bool holds, const char* what) {
    if (holds)
        return;
    std::fprintf(stderr, "must hold: %s\n", what);
    std::abort();
}

/// What is said of a refused file is a line or two without controls.
void must_be_told_well(const setup::InputError& error) {
    const std::string told = setup::to_text(error);
    must(!told.empty(), "an error says something");
    must(told.size() < 20000, "an error is short");
    must(told.find('\x1B') == std::string::npos, "an error holds no control characters");
}

const problems::Bank& shipped_bank() {
    static const problems::Bank kBank =
        problems::load_bank(fs::path(STEELYARD_SOURCE_DIR) / "question_bank");
    return kBank;
}

void take_setup(std::string_view bytes) {
    const auto setup = setup::parse_setup(bytes, "fuzzed");
    if (!setup)
        return must_be_told_well(setup.error());
    const std::string written = setup::write_setup(*setup);
    const auto again = setup::parse_setup(written, "written");
    must(again.has_value(), "a setup that is written can be read");
    must(setup::write_setup(*again) == written, "a setup is written the same a second time");
}

void take_body(std::string_view bytes) {
    if (const auto table = setup::parse_segment_table(bytes, "fuzzed"); !table)
        must_be_told_well(table.error());
}

void take_muscles(std::string_view bytes) {
    const auto muscles = setup::parse_muscles(bytes, "fuzzed");
    if (!muscles)
        must_be_told_well(muscles.error());
}

void take_lesson(std::string_view bytes) {
    const auto lesson = lesson::parse_lesson(bytes, "fuzzed", lesson::setup_folders({}));
    if (!lesson)
        return must_be_told_well(lesson.error());
    const auto again =
        lesson::parse_lesson(lesson::write_lesson(*lesson), "written", lesson::setup_folders({}));
    must(again.has_value(), "a lesson that is written can be read");
}

void take_family(std::string_view bytes) {
    static const problems::Published kPublished{setup::shipped_segment_tables().value(),
                                                setup::shipped_muscles().value()};
    const auto document = setup::parse_toml(bytes, "fuzzed");
    if (!document)
        return must_be_told_well(document.error());
    const auto family = problems::read_family(*document, kPublished);
    if (!family) {
        must(!family.error().empty(), "a refused family says why");
        return must_be_told_well(setup::first_of(family.error()));
    }
    problems::Bank bank;
    bank.families.push_back(*family);
    for (std::uint64_t seed = 1; seed <= 3; ++seed)
        static_cast<void>(problems::question_of_family(bank, bank.families.front(), seed));
}

void take_items(std::string_view bytes) {
    const auto document = setup::parse_toml(bytes, "fuzzed");
    if (!document)
        return must_be_told_well(document.error());
    if (const auto items = problems::read_items(*document); !items)
        must_be_told_well(setup::first_of(items.error()));
}

void take_blueprint(std::string_view bytes) {
    const auto blueprint = publish::parse_blueprint(bytes, "fuzzed");
    if (!blueprint)
        must_be_told_well(blueprint.error());
}

void take_quantity(std::string_view bytes) {
    for (const auto wanted :
         {setup::Dimension::number, setup::Dimension::length, setup::Dimension::angle,
          setup::Dimension::mass, setup::Dimension::force, setup::Dimension::torque})
        if (const auto read = setup::parse_quantity(bytes, wanted))
            must(std::isfinite(*read), "a quantity that is read is a finite number");
}

void take_code(std::string_view bytes) {
    const std::string code(bytes);
    if (const auto question = problems::question_from_code(shipped_bank(), code))
        must(!question->prompt.empty(), "a question asks something");
    static_cast<void>(publish::read_sheet_code(bytes));
}

/// The first byte picks the question, the rest is typed.
void take_answer(std::string_view bytes) {
    static const std::vector<problems::Question> kQuestions = [] {
        problems::PaperPlan plan;
        plan.seed = 7;
        plan.count = 40;
        auto paper = problems::make_paper(shipped_bank(), plan);
        must(paper.has_value(), "the shipped bank makes a paper");
        return *std::move(paper);
    }();
    if (bytes.empty())
        return;
    const auto at = static_cast<unsigned char>(bytes.front()) % kQuestions.size();
    const auto marking =
        problems::mark(shipped_bank(), kQuestions[at], std::string(bytes.substr(1)));
    must(!marking.feedback.empty(), "every answer is told something");
}

/// Gone when the program ends.
struct OwnFolder {
    fs::path path = fs::temp_directory_path() / ("steelyard-fuzz-" + std::to_string(getpid()));

    OwnFolder() { fs::remove_all(path); }
    ~OwnFolder() {
        std::error_code ignored;
        fs::remove_all(path, ignored);
    }
    OwnFolder(const OwnFolder&) = delete;
    OwnFolder& operator=(const OwnFolder&) = delete;
};

void take_record(std::string_view bytes) {
    using namespace learner;
    static const Course kCourse =
        *load_course(shipped_bank(), fs::path(STEELYARD_SOURCE_DIR) / "assets" / "learner");
    static const OwnFolder kFolder;
    const Clock now{1795629600000, 0};
    static Record record = [&] {
        auto opened = open_record(kFolder.path, now);
        must(opened.has_value(), "a record can be made");
        must(opened->record.database().run("PRAGMA synchronous = OFF").has_value(), "set");
        return std::move(opened->record);
    }();
    std::istringstream in{std::string(bytes)};
    const auto imported = import_answers(record, kCourse, in, "fuzzed", "", now, {});
    if (!imported) {
        must(imported.error().message.size() < 2000, "an error is short");
        return;
    }
    const auto who = record.learner_named(imported->learner);
    must(who && *who, "whose answers came in is in the record");
    const auto standing = record.standing((**who).id, kCourse, now);
    must(standing.has_value(), "what came in can be folded");
    must(record.erase_learner((**who).id).has_value(), "and goes again");
}

} // namespace

const std::vector<Target>& all_targets() {
    static const std::vector<Target> kTargets{
        {"setup", take_setup, "assets/setups"},
        {"body", take_body, "assets/body"},
        {"muscles", take_muscles, "assets/muscles"},
        {"lesson", take_lesson, "assets/lessons"},
        {"family", take_family, "question_bank/families"},
        {"items", take_items, "question_bank/items"},
        {"blueprint", take_blueprint, "assets/blueprints"},
        {"code", take_code, ""},
        {"quantity", take_quantity, ""},
        {"answer", take_answer, ""},
        {"record", take_record, ""},
    };
    return kTargets;
}

} // namespace steelyard::fuzz
