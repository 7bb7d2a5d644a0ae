#include "learner/record/check.h"
#include "learner/record/exam_record.h"
#include "learner/record/exchange/csv_reader.h"
#include "learner/record/exchange/exchange.h"
#include "learner/record/exchange/import_lines.h"
#include "learner/shipped_course.h"

#include <fstream>
#include <sstream>
#include <streambuf>

using namespace steelyard::learner;

namespace {

const Clock kNow{kEvening_ms, 0};

Record open_here(const TestFolder& folder) {
    auto opened = open_record(folder.path(), kNow);
    REQUIRE(opened);
    return std::move(opened->record);
}

/// Ada with answers of every kind, among them hostile ones, and a finished exam.
Learner fill(Record& record) {
    const Course& course = shipped_course();
    const Learner ada = *record.add_learner("Ada \"the\" oar, née Ø", kNow);
    REQUIRE(record.set_exam_day(ada.id, *read_day("2026-12-03")));
    const char* typed[] = {"12,5 N", "=1+1", "-7 N·m", "say \"four\"\nnewtons", "'", "", "@x", "ü"};
    for (int i = 0; i < 24; ++i) {
        Answer answer = answer_about(i % 2 == 0 ? "balance" : "torque-sum", i % 3 == 0,
                                     kEvening_ms + i * kMinute_ms + i);
        answer.typed = typed[i % 8];
        answer.outcome = static_cast<Outcome>(i % 5);
        answer.hints = i % 4;
        answer.help = 0.1 * (i % 4);
        answer.guess = 1.0 / (3 + i);
        answer.wrong_rule = answer.outcome == Outcome::wrong ? "arms-swapped" : "";
        REQUIRE(record.add_answer(ada.id, course, answer, kNow));
    }
    Exam exam = *new_exam(course, 3, kNow);
    give_answer(exam, "b", kNow);
    finish(exam, {kEvening_ms + kDay_ms, 0});
    REQUIRE(close_exam(record, ada.id, course, exam, report_on(course, exam), kNow));
    return *record.learner_named(ada.name).value();
}

std::string json_lines(Record& record, const Learner& learner) {
    std::string text;
    REQUIRE(export_json_lines(record, learner,
                              [&](std::string_view line) { text.append(line).append("\n"); }, {}));
    return text;
}

Recorded<Imported> import_text(Record& record, const std::string& text,
                               const std::string& as = "") {
    std::istringstream in(text);
    return import_answers(record, shipped_course(), in, "ada.jsonl", as, kNow, {});
}

/// Numbers are exported with as many digits as they need: what is folded from them is the same.
void check_same_skills(Record& from, const Learner& one, Record& to, const Learner& other) {
    const auto a = from.standing(one.id, shipped_course(), kNow);
    const auto b = to.standing(other.id, shipped_course(), kNow);
    REQUIRE(a);
    REQUIRE(b);
    CHECK(a->answers == b->answers);
    for (std::size_t i = 0; i < a->skills.size(); ++i) {
        CHECK(a->skills[i].known == b->skills[i].known);
        CHECK(a->skills[i].answers == b->skills[i].answers);
        CHECK(a->skills[i].last_ms == b->skills[i].last_ms);
        CHECK(a->skills[i].stage == b->skills[i].stage);
    }
}

std::string refusal(const std::string& text, const std::string& as = "") {
    const TestFolder folder;
    Record record = open_here(folder);
    const auto imported = import_text(record, text, as);
    REQUIRE_FALSE(imported);
    CHECK(record.learners()->empty());
    return imported.error().message;
}

const std::string kHead = R"({"steelyard_record":1,"learner":"Ada","exam_day":""})";

} // namespace

TEST_CASE("what is exported as JSON Lines and imported elsewhere is the same record") {
    const TestFolder here;
    const TestFolder there;
    Record from = open_here(here);
    Record to = open_here(there);
    const Learner ada = fill(from);
    const std::string text = json_lines(from, ada);
    const auto imported = import_text(to, text);
    REQUIRE(imported);
    CHECK(imported->learner == ada.name);
    CHECK(imported->added == imported->read.lines);
    CHECK(imported->exams == 1);
    const auto copy = to.learner_named(ada.name);
    REQUIRE(*copy);
    CHECK((*copy)->exam_day == ada.exam_day);
    CHECK(json_lines(to, **copy) == text);
    check_same_skills(from, ada, to, **copy);
    CHECK(check_record(to, shipped_course(), kNow, {})->mended.empty());
}

TEST_CASE("exports from when what to come back to was called flagged are read alike") {
    const TestFolder here;
    const TestFolder there;
    Record from = open_here(here);
    Record to = open_here(there);
    std::string text = json_lines(from, fill(from));
    const auto first = text.find(R"("come_back":0)");
    REQUIRE(first != std::string::npos);
    text.replace(first, 13, R"("come_back":1)");
    std::string earlier = text;
    for (auto at = earlier.find("come_back"); at != std::string::npos;
         at = earlier.find("come_back"))
        earlier.replace(at, 9, "flagged");
    REQUIRE(import_text(to, earlier));
    CHECK(json_lines(to, to.learners()->front()) == text);
}

TEST_CASE("importing a file twice adds nothing the second time") {
    const TestFolder folder;
    Record record = open_here(folder);
    const Learner ada = fill(record);
    const auto again = import_text(record, json_lines(record, ada));
    REQUIRE(again);
    CHECK(again->read.lines > 20);
    CHECK(again->added == 0);
    CHECK(again->exams == 0);
}

TEST_CASE("answers of two machines come together in the order of their time") {
    const TestFolder one;
    const TestFolder other;
    Record here = open_here(one);
    Record there = open_here(other);
    const Course& course = shipped_course();
    const auto ada = here.add_learner("Ada", kNow);
    const auto twin = there.add_learner("Ada", kNow);
    Standing expected = fresh_standing(course);
    for (int i = 0; i < 10; ++i) {
        const Answer answer = answer_about("balance", i % 3 != 0, kEvening_ms + i * kDay_ms);
        expected = after_answer(course, expected, answer, 0);
        REQUIRE((i % 2 == 0 ? here : there)
                    .add_answer((i % 2 == 0 ? ada : twin)->id, course, answer, kNow));
    }
    REQUIRE(import_text(here, json_lines(there, *twin)));
    const auto merged = here.standing(ada->id, course, kNow);
    CHECK(merged->skills[*course.find("balance")] == expected.skills[*course.find("balance")]);
}

TEST_CASE("rows for a table come back as the same answers") {
    const TestFolder here;
    const TestFolder there;
    Record from = open_here(here);
    Record to = open_here(there);
    const Learner ada = fill(from);
    std::string csv;
    for (const auto column : answer_columns())
        csv += (csv.empty() ? "" : ",") + std::string(column);
    csv += "\r\n";
    // As RFC 4180 quotes; words that a spreadsheet would compute after an apostrophe.
    REQUIRE(export_rows(from, ada,
                        [&](const std::vector<Cell>& cells) {
                            std::string row;
                            for (const Cell& cell : cells) {
                                std::string words = cell.text;
                                if (!cell.is_number && !words.empty() &&
                                    std::string("=+-@").find(words[0]) != std::string::npos)
                                    words.insert(0, "'");
                                std::string quoted;
                                for (const char c : words)
                                    quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
                                row += (row.empty() ? "" : ",") + ("\"" + quoted + "\"");
                            }
                            csv += row + "\r\n";
                        },
                        {}));
    const auto imported = import_text(to, csv, ada.name);
    REQUIRE(imported);
    const auto copy = to.learner_named(ada.name);
    check_same_skills(from, ada, to, **copy);
    CHECK(*from.database().text("SELECT group_concat(typed) FROM answer") ==
          *to.database().text("SELECT group_concat(typed) FROM answer"));
}

TEST_CASE("a line that cannot be imported is named, and nothing is imported") {
    const std::string answer =
        R"({"answer":{"at_ms":1795629600000,"code":"A","skill":"balance","family":"f",)"
        R"("purpose":"practice","outcome":"right","typed":"","wrong_rule":"","attempt":1,)"
        R"("hints":0,"help":0.0,"guess":0.1,"foreseen":0.5,"took_ms":1}})";
    const auto with = [&](const std::string& old, const std::string& now) {
        std::string changed = answer;
        changed.replace(changed.find(old), old.size(), now);
        return kHead + "\n" + changed + "\n";
    };
    CHECK_THAT(refusal(""), ContainsSubstring("line 1"));
    CHECK_THAT(refusal("{\"answer\":{}}"), ContainsSubstring("steelyard_record"));
    CHECK_THAT(refusal("{\"steelyard_record\":99,\"learner\":\"Ada\"}"),
               ContainsSubstring("later Steelyard"));
    CHECK_THAT(refusal(kHead + "\n{broken"), ContainsSubstring("line 2: found no JSON object"));
    CHECK_THAT(refusal(kHead + "\n{\"poem\":1}"), ContainsSubstring("\"poem\""));
    CHECK_THAT(refusal(with("\"right\"", "\"rihgt\"")), ContainsSubstring("rihgt"));
    CHECK_THAT(refusal(with("1795629600000", "1795629600")), ContainsSubstring("2000 and 2200"));
    CHECK_THAT(refusal(with("0.1", "1e999")), ContainsSubstring("line 2"));
    CHECK_THAT(refusal(with("0.1", "\"x\"")), ContainsSubstring("no number for"));
    CHECK_THAT(refusal(with("\"guess\":0.1", "\"guess\":1.0")),
               ContainsSubstring("guess that is no number from 0 to 0.95"));
    CHECK_THAT(refusal(with("\"attempt\":1", "\"attempt\":-1")), ContainsSubstring("attempt"));
    CHECK_THAT(refusal(kHead + "\n{\"exam\":{\"title\":\"x\"}}"), ContainsSubstring("an exam"));
    CHECK_THAT(refusal("at,code\nx,y\n", "Ada"), ContainsSubstring("the columns at,code"));
}

TEST_CASE("an erased learner leaves no trace in any file") {
    const TestFolder folder;
    Record record = open_here(folder);
    const auto ada = record.add_learner("Adalbertine-Zebra", kNow);
    const auto bo = record.add_learner("Bo", kNow);
    const Course& course = shipped_course();
    Answer answer = answer_about("balance", true, kEvening_ms);
    answer.typed = "zebra-typed-this";
    REQUIRE(record.add_answer(ada->id, course, answer, kNow));
    REQUIRE(record.add_answer(bo->id, course, answer_about("balance", true, kEvening_ms), kNow));
    REQUIRE(record.back_up_if_due(kNow));
    REQUIRE(record.erase_learner(ada->id));
    CHECK(record.learners()->size() == 1);
    CHECK(record.standing(bo->id, course, kNow)->answers == 1);
    int files = 0;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder.path())) {
        if (!entry.is_regular_file())
            continue;
        std::ifstream in(entry.path(), std::ios::binary);
        std::stringstream bytes;
        bytes << in.rdbuf();
        INFO(entry.path().string());
        CHECK(bytes.str().find("Adalbertine") == std::string::npos);
        CHECK(bytes.str().find("zebra-typed") == std::string::npos);
        ++files;
    }
    CHECK(files >= 2);
    CHECK_FALSE(record.erase_learner(ada->id));
}

TEST_CASE(
    "an exam that could not be sat is refused: no items, an item beyond, numbers without end") {
    const TestFolder folder;
    Record record = open_here(folder);
    const Learner ada = *record.add_learner("Ada", kNow);
    Exam exam = *new_exam(shipped_course(), 3, kNow);
    REQUIRE(keep_exam(record, ada.id, exam));
    const std::string text = json_lines(record, ada);
    const TestFolder elsewhere;
    Record other = open_here(elsewhere);
    REQUIRE(import_text(other, text)->exams == 1);
    const auto changed = [&](const std::string& from, const std::string& to) {
        std::string wrong = text;
        const std::size_t at = wrong.find(from);
        REQUIRE(at != std::string::npos);
        return refusal(wrong.replace(at, from.size(), to));
    };
    const std::string impossible = "missing or impossible members";
    CHECK_THAT(changed("\"item\":0", "\"item\":40"), ContainsSubstring(impossible));
    CHECK_THAT(changed("\"item\":0", "\"item\":-1"), ContainsSubstring(impossible));
    CHECK_THAT(changed("\"item\":0", "\"item\":1e99"), ContainsSubstring(impossible));
    CHECK_THAT(changed("\"item\":0", "\"item\":99999999999999999999"),
               ContainsSubstring(impossible));
    CHECK_THAT(changed("\"item\":0", "\"item\":1e999"), ContainsSubstring("no JSON object"));
    CHECK_THAT(changed("\"item\":0,", ""), ContainsSubstring(impossible));
    CHECK_THAT(changed("\"questions\":0", "\"questions\":4000"), ContainsSubstring(impossible));
    CHECK_THAT(changed("\"allowed_ms\":", "\"allowed_ms\":99999999"),
               ContainsSubstring(impossible));
    CHECK_THAT(changed("\"foreseen\":0.5", "\"foreseen\":1e99"), ContainsSubstring(impossible));
    CHECK_THAT(changed("\"took_ms\":0", "\"took_ms\":-5"), ContainsSubstring(impossible));
    const std::size_t items = text.find("\"items\":[") + 9;
    CHECK_THAT(refusal(text.substr(0, items) + "]}}\n"), ContainsSubstring(impossible));
}

TEST_CASE("an exam that lost its items is not exported, so that what is exported can be imported") {
    const TestFolder folder;
    Record record = open_here(folder);
    const Learner ada = fill(record);
    Exam exam = *new_exam(shipped_course(), 5, kNow);
    REQUIRE(keep_exam(record, ada.id, exam));
    REQUIRE(
        record.database().run("UPDATE exam SET item = 4000; DELETE FROM exam_item WHERE exam = " +
                              std::to_string(exam.id)));
    const TestFolder elsewhere;
    Record other = open_here(elsewhere);
    const auto imported = import_text(other, json_lines(record, ada));
    REQUIRE(imported);
    CHECK(imported->exams == 1);
}

TEST_CASE("a line, a cell or a row without end is refused before it fills the memory") {
    /// Gives the same characters for ever.
    class Endless : public std::streambuf {
    public:
        explicit Endless(std::string again) : again_(std::move(again)) {}
        std::int64_t read() const { return read_; }

    protected:
        int_type underflow() override {
            read_ += static_cast<std::int64_t>(again_.size());
            setg(again_.data(), again_.data(), again_.data() + again_.size());
            return traits_type::to_int_type(again_.front());
        }

    private:
        std::string again_;
        std::int64_t read_ = 0;
    };
    for (const std::string& again : {std::string("{\"a\":\"aaaaaaaa"), std::string("at,"),
                                     std::string("\"aaaaaaaa\n"), std::string("aaaaaaaaaa")}) {
        const TestFolder folder;
        Record record = open_here(folder);
        Endless endless(again);
        std::istream in(&endless);
        const auto imported =
            import_answers(record, shipped_course(), in, "endless", "Ada", kNow, {});
        REQUIRE_FALSE(imported);
        CHECK(imported.error().trouble == Trouble::refused);
        CHECK(endless.read() < (16 << 20));
        CHECK(record.learners()->empty());
    }
}

TEST_CASE("a row of more cells than any table has is refused") {
    const TestFolder folder;
    Record record = open_here(folder);
    const auto imported = import_text(record, "at" + std::string(kMostCells, ',') + "\n", "Ada");
    REQUIRE_FALSE(imported);
    CHECK_THAT(imported.error().message, ContainsSubstring("line 1"));
    std::istringstream in("a\n" + std::string(kMostCells, ','));
    CsvReader reader(in);
    REQUIRE(reader.row());
    CHECK_THAT(reader.row().error(), ContainsSubstring("1000 cells"));
}

TEST_CASE(
    "an import without end in depth, or with a name that is none, is refused in few letters") {
    const TestFolder folder;
    Record record = std::move(open_record(folder.path(), kNow)->record);
    const auto refusal = [&](const std::string& text) {
        const auto imported = import_text(record, text);
        REQUIRE_FALSE(imported);
        CHECK(imported.error().message.size() < 600);
        CHECK(imported.error().message.find('\x1B') == std::string::npos);
        return imported.error().message;
    };
    const std::string deep = std::string(1000000, '[') + std::string(1000000, ']');
    CHECK_THAT(refusal("{\"steelyard_record\":" + deep + "}\n"), ContainsSubstring("line 1"));
    CHECK_THAT(refusal("{\"answer\":" + deep + "}\n"), ContainsSubstring("line 1"));
    CHECK_THAT(refusal("{\"" + std::string(100000, 'k') + "\":1}\n"), ContainsSubstring("kkk…"));
    for (const char* name : {"a\\u001b[2J", "a\\u202e", "a\\nb"})
        CHECK_THAT(refusal(std::string(R"({"steelyard_record":1,"learner":")") + name +
                           "\",\"exam_day\":\"\"}\n"),
                   ContainsSubstring("A name cannot have"));
    CHECK(record.learners()->empty());
}

TEST_CASE("lines and questions are counted alike on every way") {
    const TestFolder folder;
    Record record = std::move(open_record(folder.path(), kNow)->record);
    const std::int64_t ada = record.add_learner("Ada", kNow)->id;
    for (int i = 0; i < 6; ++i) {
        Answer answer = answer_about("balance", i % 3 == 2, kEvening_ms + i * kSecond_ms);
        answer.attempt = 1 + i % 3; // two questions, three attempts each
        REQUIRE(record.add_answer(ada, shipped_course(), answer, kNow));
    }
    CHECK(to_text(*record.sums(ada)) == "6 lines, 2 questions");
    std::string text;
    const auto who = record.learner_named("Ada").value();
    REQUIRE(export_json_lines(record, *who,
                              [&](std::string_view line) { text.append(line).append("\n"); }, {}));
    const TestFolder there;
    Record other = std::move(open_record(there.path(), kNow)->record);
    const auto imported = import_text(other, text);
    REQUIRE(imported);
    CHECK(to_text(imported->read) == "6 lines, 2 questions");
    CHECK(imported->added == 6);
    CHECK(to_text(check_record(other, shipped_course(), kNow, {})->answers) ==
          "6 lines, 2 questions");
}
