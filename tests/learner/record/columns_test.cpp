// Tables of columns: what a record and its exports hold, and what becomes of those that hold less.

#include "learner/record/answer_columns.h"
#include "learner/record/exchange/exchange.h"
#include "learner/record/schema.h"
#include "learner/record/skill_columns.h"
#include "learner/shipped_course.h"

#include <fstream>
#include <sstream>

using namespace steelyard::learner;
namespace fs = std::filesystem;

namespace {

const Clock kNow{kEvening_ms, 0};

Record open_here(const TestFolder& folder) {
    auto opened = open_record(folder.path(), kNow);
    REQUIRE(opened);
    return std::move(opened->record);
}

std::string columns_of(Record& record, const std::string& table) {
    return *record.database().text("SELECT group_concat(name, ', ') FROM pragma_table_info('" +
                                   table + "')");
}

/// An answer with nothing left at its default.
Answer full_answer() {
    Answer answer = answer_about("balance", false, kEvening_ms);
    answer.purpose = Purpose::quick;
    answer.typed = "7 N";
    answer.wrong_rule = "arms-swapped";
    answer.attempt = 2;
    answer.hints = 3;
    answer.help = 0.25;
    answer.guess = 0.5;
    answer.foreseen = 0.75;
    answer.took_ms = 9000;
    return answer;
}

/// The one answer that an import brought.
Answer answer_in(Record& record) {
    auto row = record.database().prepare("SELECT " + answer_names() + " FROM answer");
    REQUIRE(row);
    const auto found = row->row();
    REQUIRE((found && *found));
    return read_answer(*row);
}

Recorded<Imported> import_text(Record& record, const std::string& text) {
    std::istringstream in(text);
    return import_answers(record, shipped_course(), in, "ada.csv", "Ada", kNow, {});
}

/// A table of full_answer() without some of its columns.
std::string csv_without(const std::vector<std::string_view>& left_out) {
    const TestFolder folder;
    Record record = open_here(folder);
    const Learner ada = *record.add_learner("Ada", kNow);
    REQUIRE(record.add_answer(ada.id, shipped_course(), full_answer(), kNow));
    std::string head;
    std::string row;
    REQUIRE(export_rows(record, ada,
                        [&](const std::vector<Cell>& cells) {
                            for (std::size_t i = 0; i < cells.size(); ++i) {
                                const std::string_view heading = answer_columns()[i];
                                if (std::find(left_out.begin(), left_out.end(), heading) !=
                                    left_out.end())
                                    continue;
                                head += (head.empty() ? "" : ",") + std::string(heading);
                                row += (row.empty() ? "" : ",") + cells[i].text;
                            }
                        },
                        {}));
    return head + "\r\n" + row + "\r\n";
}

void damage(const fs::path& path, std::streamoff at, std::size_t bytes) {
    std::fstream file(path, std::ios::in | std::ios::out | std::ios::binary);
    file.seekp(at);
    file << std::string(bytes, '\x5A');
}

void answer_times(const TestFolder& folder, int answers, TimeMs first_ms) {
    Record record = open_here(folder);
    auto ada = *record.learner_named("Ada");
    if (!ada)
        ada = *record.add_learner("Ada", kNow);
    for (int i = 0; i < answers; ++i) {
        Answer answer = full_answer();
        answer.at_ms = first_ms + i * kSecond_ms;
        answer.attempt = 1;
        REQUIRE(record.add_answer(ada->id, shipped_course(), answer, kNow));
    }
}

} // namespace

TEST_CASE("a new record has the columns of the tables, in their order") {
    const TestFolder folder;
    Record record = open_here(folder);
    CHECK(columns_of(record, "answer") == "id, learner, " + answer_names());
    CHECK(columns_of(record, "skill_state") == "learner, skill, " + skill_names());
}

TEST_CASE("every column of an answer is kept, and none is taken for another") {
    const TestFolder folder;
    Record record = open_here(folder);
    const Learner ada = *record.add_learner("Ada", kNow);
    const Answer given = full_answer();
    REQUIRE(record.add_answer(ada.id, shipped_course(), given, kNow));
    const Answer kept = answer_in(record);
    CHECK(kept.at_ms == given.at_ms);
    CHECK(kept.code == given.code);
    CHECK(kept.skill == given.skill);
    CHECK(kept.family == given.family);
    CHECK(kept.purpose == given.purpose);
    CHECK(kept.outcome == given.outcome);
    CHECK(kept.typed == given.typed);
    CHECK(kept.wrong_rule == given.wrong_rule);
    CHECK(kept.attempt == given.attempt);
    CHECK(kept.hints == given.hints);
    CHECK(kept.help == given.help);
    CHECK(kept.guess == given.guess);
    CHECK(kept.foreseen == given.foreseen);
    CHECK(kept.took_ms == given.took_ms);
}

TEST_CASE("a table with fewer columns is read: what is missing is as in a new answer") {
    const std::string csv =
        csv_without({"purpose", "typed", "wrong_rule", "attempt", "hints", "help", "took_ms"});
    const TestFolder folder;
    Record record = open_here(folder);
    const auto imported = import_text(record, csv);
    REQUIRE(imported);
    CHECK(imported->added == 1);
    const Answer read = answer_in(record);
    CHECK(read.outcome == Outcome::wrong);
    CHECK(read.guess == 0.5);
    CHECK(read.foreseen == 0.75);
    CHECK(read.purpose == Purpose::practice);
    CHECK(read.typed.empty());
    CHECK(read.attempt == 1);
    CHECK(read.hints == 0);
    CHECK(read.help == 0.0);
    CHECK(read.took_ms == 0);
}

TEST_CASE("the columns of a table may stand in any order") {
    const TestFolder folder;
    Record record = open_here(folder);
    REQUIRE(import_text(record, "foreseen,guess,outcome,family,skill,code,at\n"
                                "0.75,0.5,right,f,balance,K7M2Q,2026-11-25T18:00:00Z\n"));
    const Answer read = answer_in(record);
    CHECK(read.code == "K7M2Q");
    CHECK(read.foreseen == 0.75);
    CHECK(read.guess == 0.5);
}

TEST_CASE("a table without a column that every answer needs, or with an unknown one, is refused") {
    const auto refusal = [](const std::string& csv) {
        const TestFolder folder;
        Record record = open_here(folder);
        const auto imported = import_text(record, csv);
        REQUIRE_FALSE(imported);
        CHECK(*record.database().integer("SELECT count(*) FROM answer") == 0);
        return imported.error().message;
    };
    for (const AnswerColumn& column : answer_table())
        if (column.absent == Absent::never)
            CHECK_THAT(refusal(csv_without({column.heading})),
                       ContainsSubstring("without \"" + std::string(column.heading) + "\""));
    CHECK_THAT(refusal("at,code,skill,family,outcome,guess,foreseen,mood\n"),
               ContainsSubstring("\"mood\"") && ContainsSubstring("a later Steelyard"));
    CHECK_THAT(refusal("at,code,skill,family,outcome,guess,foreseen,at\n"),
               ContainsSubstring("\"at\" twice"));
}

TEST_CASE("a line of JSON with fewer members is read") {
    const TestFolder folder;
    Record record = open_here(folder);
    REQUIRE(import_text(record, "{\"steelyard_record\":1,\"learner\":\"Ada\",\"exam_day\":\"\"}\n"
                                R"({"answer":{"at_ms":1795629600000,"code":"A","skill":"balance",)"
                                R"("family":"f","outcome":"right","guess":0.5,"foreseen":0.75}})"));
    const Answer read = answer_in(record);
    CHECK(read.attempt == 1);
    CHECK(read.guess == 0.5);
}

TEST_CASE("answers of a damaged record of an earlier version are brought over") {
    const TestFolder folder;
    answer_times(folder, 20, kEvening_ms);
    REQUIRE(open_here(folder).back_up_if_due(kNow));
    answer_times(folder, 30, kEvening_ms + kDay_ms);
    const fs::path file = folder.path() / kRecordFile;
    std::int64_t page = 0;
    {
        // As a version would have left it that knew neither hints nor counted rules.
        auto old = Database::open(file, Access::write);
        REQUIRE(old->run("ALTER TABLE answer DROP COLUMN hints; DROP TABLE rule_count;"
                         "PRAGMA user_version = 1"));
        page = *old->integer("SELECT rootpage FROM sqlite_schema WHERE name = 'skill_state'");
    }
    damage(file, (page - 1) * 4096, 4096);
    auto opened = open_record(folder.path(), kNow);
    REQUIRE(opened);
    REQUIRE(opened->notices.size() == 1);
    CHECK_THAT(opened->notices[0], ContainsSubstring("30 newer answers could be read"));
    CHECK(*opened->record.database().integer("SELECT count(*) FROM answer") == 50);
    // Those of the backup had three hints, those of the damaged file say nothing of them.
    CHECK(*opened->record.database().integer("SELECT sum(hints) FROM answer") == 60);
}
