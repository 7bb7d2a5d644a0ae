// Every word on drawings of questions of all families, on paper and in the window: nothing that is
// read may be written over, struck by a line, laid over the figure or cut off.

#include "catch.h"
#include "publish/paper_questions.h"
#include "publish/question/question_drawing.h"
#include "publish/question/question_figure.h"
#include "publish/question/question_view.h"
#include "scene/label_counts.h"

using namespace steelyard;
using namespace steelyard::publish;

namespace {

/// Draws of each family in each edition: some 800 drawings on paper.
#ifdef STEELYARD_SANITIZED
constexpr std::uint64_t kDraws = 1;
#else
constexpr std::uint64_t kDraws = 4;
#endif

/// Places to choose from may lie so close together that the disc of one letter touches the next.
constexpr int kNearLetters = 5;
/// One arrow's edge touches the plate of a word beside it.
constexpr int kTouched = 1;

std::vector<problems::Question> drawn_questions(const problems::Bank& bank) {
    std::vector<problems::Question> questions;
    for (const auto* const families : {&bank.families, &bank.us_editions})
        for (const problems::Family& family : *families)
            for (std::uint64_t seed = 1; seed <= kDraws; ++seed)
                if (auto question = problems::question_of_family(bank, family, seed);
                    question && has_figure(*question))
                    questions.push_back(std::move(*question));
    return questions;
}

/// In the window, where limbs are larger: lengths marked beside a trunk that reach over its edge,
/// and words that the edge of a thigh cut by the sheet touches.
constexpr int kOnTrunk = 9;
constexpr int kAtEdge = 10;

void check_none(const scene::LabelCounts& counts, int struck = kTouched, int on_figure = 0) {
    INFO(counts.told);
    CHECK(counts.words > 2 * counts.drawings);
    CHECK(counts.on_words <= kNearLetters);
    CHECK(counts.struck <= struck);
    CHECK(counts.on_figure <= on_figure);
    CHECK(counts.off_sheet == 0);
}

} // namespace

TEST_CASE("no word on the figure of a question is struck, covered, on the figure or cut off",
          "[question-labels]") {
    const problems::Bank bank = real_bank();
    scene::LabelCounts counts;
    for (const problems::Question& question : drawn_questions(bank))
        counts.add(question_figure(question, figure_size(question)), 1.0,
                   question.family + " " + question.code + " on paper");
    CHECK(counts.drawings >= static_cast<int>(170 * kDraws));
    check_none(counts);
}

TEST_CASE("no word on the drawing of a question in the window is struck, covered or cut off",
          "[question-labels]") {
    const problems::Bank bank = real_bank();
    scene::LabelCounts counts;
    for (const problems::Question& question : drawn_questions(bank))
        for (const double text_scale : {1.0, 1.5}) {
            QuestionDrawing how;
            how.size_px = {940.0, 720.0};
            how.text_scale = text_scale;
            how.top_px = 64.0 * text_scale;
            counts.add(question_drawing(question, how), text_scale,
                       question.family + " " + question.code + " in the window at " +
                           std::to_string(text_scale));
        }
    check_none(counts, kAtEdge, kOnTrunk);
}

TEST_CASE("no word on the solved drawing of a limb is covered or cut off", "[question-labels]") {
    const problems::Bank bank = real_bank();
    scene::LabelCounts counts;
    for (const problems::Question& question : drawn_questions(bank)) {
        const auto* picture = std::get_if<problems::LeverPicture>(&question.picture);
        if (picture == nullptr || !picture->limb)
            continue;
        QuestionDrawing how;
        how.size_px = {940.0, 720.0};
        how.top_px = 64.0;
        how.answered = true;
        counts.add(question_drawing(question, how), 1.0,
                   question.family + " " + question.code + " answered");
    }
    INFO(counts.told);
    CHECK(counts.drawings > 100);
    CHECK(counts.on_words == 0);
    CHECK(counts.off_sheet == 0);
}

TEST_CASE("the solved drawing of a question in US units shows no SI unit") {
    const problems::Bank bank = real_bank();
    int drawings = 0;
    for (const problems::Family& family : bank.us_editions) {
        const auto question = problems::question_of_family(bank, family, 2);
        if (!question || !has_figure(*question))
            continue;
        ++drawings;
        QuestionDrawing how;
        how.size_px = {940.0, 720.0};
        how.answered = true;
        for (const scene::Shape& shape : question_drawing(*question, how).shapes)
            if (const auto* label = std::get_if<scene::Label>(&shape)) {
                INFO(family.id << ": " << label->text);
                for (const char* unit : {"\u00a0N", "\u00a0m", "\u00a0cm", "\u00a0kg"}) {
                    const std::size_t length = std::string(unit).size();
                    const bool ends = label->text.size() >= length &&
                                      label->text.compare(label->text.size() - length,
                                                          std::string::npos, unit) == 0;
                    CHECK_FALSE(ends);
                }
            }
    }
    CHECK(drawings > 60);
}

TEST_CASE("every lever of a question that turns about a joint is drawn as a limb") {
    // Places where the question hides the joint, or whose lever is a distance and no limb.
    const std::vector<std::string> distances{"place-the-axis-of-a-bone", "rank-the-joints",
                                             "distance-for-a-torque",    "torque-of-a-sandbag-us",
                                             "two-loads-one-side",       "share-on-the-hands"};
    const problems::Bank bank = real_bank();
    int limbs = 0;
    for (const problems::Question& question : drawn_questions(bank)) {
        const auto* picture = std::get_if<problems::LeverPicture>(&question.picture);
        if (picture == nullptr ||
            std::find(distances.begin(), distances.end(), question.family) != distances.end())
            continue;
        limbs += picture->limb ? 1 : 0;
        for (const char* joint : {"elbow", "shoulder", "knee", "the hip", "ankle", "wrist"}) {
            INFO(question.family << ": " << picture->axis_name);
            if (picture->axis_name.find(joint) != std::string::npos)
                CHECK(picture->limb.has_value());
        }
    }
    CHECK(limbs > 150);
}
