// The window and the terminal tell the record the same of the same answers.

#include "app/platform/key.h"
#include "app/practice/session_screen.h"
#include "cli/command_line.h"
#include "learner/shipped_course.h"
#include "learner/study/typed_answers.h"
#include "learner/time/wall_clock.h"

#include <algorithm>
#include <set>
#include <sstream>

namespace steelyard::app {

namespace {

using learner::Answer;
using learner::Outcome;
using learner::shipped_course;
using learner::TestFolder;
using learner::wall_clock;

constexpr int kSeed = 3;
constexpr int kQuestions = 16;

/// Somebody at the window's session, of whom the lines are noted that do the same in a terminal.
class AtTheWindow {
public:
    AtTheWindow(const TestFolder& folder, bool placement)
        : desk_(*shipped_course().bank, std::filesystem::path(STEELYARD_SOURCE_DIR) / "assets",
                folder.path(), wall_clock()) {
        REQUIRE(desk_.add_learner("Ada", wall_clock()).empty());
        if (!placement)
            desk_.skip_placement();
        const learner::Clock now = wall_clock();
        open_session(screen_,
                     learner::begin_day({desk_.course(), desk_.standing(), now}, kSeed, kQuestions),
                     desk_, now);
    }

    /// Does something else at each question until there is none.
    void answer_all() {
        for (int turn = 0; screen_.question.model && turn < 200; ++turn)
            answer_one(turn);
        CHECK(screen_.session.ended);
    }

    const std::string& lines() const { return lines_; }

private:
    QuestionModel& model() { return *screen_.question.model; }
    const learner::Asking& asking() { return model().asking; }

    void press(int key, const std::string& line) {
        const QuestionFrame frame =
            read_question_keys(*desk_.course().bank, {{key, 0}}, screen_.question);
        settle_session(screen_, desk_, wall_clock(), frame.wish);
        if (!line.empty())
            lines_ += line + '\n';
    }

    void go_on() { press(key::kEnter, ""); }

    void give(const std::string& answer) {
        take_answer(model(), answer);
        press(key::kEnter, answer);
    }

    void answer_one(int turn) {
        if (is_example(screen_.session)) {
            lines_ += '\n'; // Enter, after reading
            return go_on();
        }
        if (has_own_step(asking()) && turn % 2 == 0)
            do_own_step();
        switch (turn % 6) {
        case 1:
            return skip_or_give_up();
        case 2:
            give_hints(2);
            return give_wrong_answers();
        case 3:
            press(key::kW, "?");
            return go_on();
        case 4:
            return give_wrong_answers();
        case 5:
            give("#"); // cannot be read
            give_hints(1);
            break;
        default:
            break;
        }
        give(learner::right_answer(asking().question));
        go_on();
    }

    void skip_or_give_up() {
        if (may_skip(asking()))
            return press(key::kN, "n");
        press(key::kW, "?");
        go_on();
    }

    void give_hints(int count) {
        for (int i = 0; i < count && has_hint(asking()); ++i)
            press(key::kH, "h");
    }

    void give_wrong_answers() {
        const std::string answer = wrong_answer();
        for (int tries = 0; !asking().finished && tries < 3; ++tries)
            give(answer);
        REQUIRE(asking().finished);
        go_on();
    }

    void do_own_step() {
        const problems::Step& step = asking().question.steps[asking().open_steps];
        model().step_typed =
            step.options.empty() ? std::to_string(step.value) : step.options[step.correct_option];
        lines_ += "s\n" + model().step_typed + '\n';
        enter_own_step(model());
        if (has_own_step(asking()))
            lines_ += "q\n"; // back to the answer
    }

    std::string wrong_answer() {
        const problems::Question& question = asking().question;
        if (wanted_number(question))
            return std::to_string(question.wrong_rules.empty()
                                      ? 3.7 * wanted_number(question)->value
                                      : question.wrong_rules.front().value);
        if (wanted_place(question))
            return spots_of(question)[wanted_place(question)->correct == 0 ? 1 : 0].letter;
        std::vector<std::size_t> chosen = right_ones(question);
        if (std::holds_alternative<problems::OrderWanted>(question.wanted))
            std::reverse(chosen.begin(), chosen.end());
        else
            chosen = {right_ones(question).front() == 0 ? 1U : 0U};
        return learner::typed_choices(chosen);
    }

    Desk desk_;
    SessionScreen screen_;
    std::string lines_;
};

void learn_in_terminal(const TestFolder& folder, bool placement, const std::string& lines) {
    const std::string data = folder.path().string();
    const std::string seed = std::to_string(kSeed);
    const std::string count = std::to_string(kQuestions);
    std::vector<const char*> arguments{"steelyard",   "learn",  "--learner",  "Ada",
                                       "--new",       "--seed", seed.c_str(), "--count",
                                       count.c_str(), "--data", data.c_str()};
    if (!placement)
        arguments.push_back("--no-placement");
    std::istringstream in(lines);
    std::ostringstream out;
    std::ostringstream err;
    const int status =
        cli::run_command_line(static_cast<int>(arguments.size()), arguments.data(), {in, out, err});
    INFO(err.str());
    CHECK(status == 0);
}

/// All that was kept, oldest first.
std::vector<Answer> answers_in(const TestFolder& folder) {
    auto opened = learner::open_record(folder.path(), wall_clock());
    REQUIRE(opened);
    const auto ada = opened->record.learner_named("Ada");
    REQUIRE((ada && *ada));
    std::vector<Answer> answers = *opened->record.last_answers((*ada)->id, 1000);
    std::reverse(answers.begin(), answers.end());
    return answers;
}

/// Two people answer some seconds apart, in which almost nothing is forgotten.
constexpr double kForgotten = 1e-4;

} // namespace

TEST_CASE("The window and the terminal tell the record the same of the same answers") {
    const bool placement = GENERATE(false, true);
    const TestFolder window;
    const TestFolder terminal;
    AtTheWindow learner(window, placement);
    learner.answer_all();
    learn_in_terminal(terminal, placement, learner.lines());
    const std::vector<Answer> shown = answers_in(window);
    const std::vector<Answer> typed = answers_in(terminal);
    REQUIRE(shown.size() == typed.size());
    std::set<Outcome> outcomes;
    bool second_try = false;
    bool helped = false;
    for (std::size_t i = 0; i < shown.size(); ++i) {
        INFO(i << ": " << shown[i].family << ", " << typed[i].family);
        CHECK(shown[i].code == typed[i].code);
        CHECK(shown[i].skill == typed[i].skill);
        CHECK(shown[i].family == typed[i].family);
        CHECK(shown[i].purpose == typed[i].purpose);
        CHECK(shown[i].outcome == typed[i].outcome);
        CHECK(shown[i].typed == typed[i].typed);
        CHECK(shown[i].wrong_rule == typed[i].wrong_rule);
        CHECK(shown[i].attempt == typed[i].attempt);
        CHECK(shown[i].hints == typed[i].hints);
        CHECK(shown[i].help == typed[i].help);
        CHECK(shown[i].guess == typed[i].guess);
        CHECK(shown[i].foreseen == Approx(typed[i].foreseen).margin(kForgotten));
        outcomes.insert(shown[i].outcome);
        second_try = second_try || shown[i].attempt == 2;
        helped = helped || (shown[i].help > 0.0 && shown[i].help < 1.0);
    }
    // The script tried everything.
    CHECK(outcomes.size() == 5);
    CHECK(second_try);
    CHECK(helped);
}

} // namespace steelyard::app
