#include "catch.h"
#include "publish/paper_questions.h"
#include "publish/pictures/drawing_check.h"
#include "publish/question/question_figure.h"
#include "publish/question/question_view.h"
#include "publish/squeezed.h"
#include "scene/marks/label_board.h"

using namespace steelyard;
using namespace steelyard::publish;
using problems::Question;

namespace {

std::vector<scene::Label> labels_of(const scene::Drawing& drawing) {
    std::vector<scene::Label> labels;
    for (const scene::Shape& shape : drawing.shapes)
        if (const auto* label = std::get_if<scene::Label>(&shape))
            labels.push_back(*label);
    return labels;
}

/// Some questions of every family.
std::vector<Question> of_every_family(const problems::Bank& bank) {
    std::vector<Question> questions;
    for (const problems::Family& family : bank.families) {
        for (std::uint64_t seed = 1; seed <= 3; ++seed) {
            auto question = problems::question_of_family(bank, family, seed);
            if (question)
                questions.push_back(std::move(*question));
        }
    }
    return questions;
}

} // namespace

TEST_CASE("every figure is sound and never states the answer") {
    const problems::Bank bank = real_bank();
    std::size_t drawn = 0;
    for (const Question& question : of_every_family(bank)) {
        if (!has_figure(question))
            continue;
        ++drawn;
        const scene::Drawing figure = question_figure(question, figure_size(question));
        INFO(question.code << ": " << question.prompt);
        CHECK_FALSE(fault_in(figure));
        for (const scene::Label& label : labels_of(figure)) {
            INFO(label.text);
            // An answer may equal a length that the question itself states; where a letter is
            // the answer, the figure shows all of them.
            const bool stated =
                wanted_place(question) ||
                squeezed(question.prompt).find(squeezed(label.text)) != std::string::npos;
            CHECK((stated || squeezed(label.text) != squeezed(question.answer_text)));
        }
    }
    CHECK(drawn > 50);
}

TEST_CASE("the words of a figure stay on its sheet") {
    const problems::Bank bank = real_bank();
    for (const Question& question : of_every_family(bank)) {
        if (!has_figure(question))
            continue;
        const scene::Point size = figure_size(question);
        for (const scene::Label& label : labels_of(question_figure(question, size))) {
            INFO(question.code << ": " << label.text);
            const scene::Rect room = scene::room_of(label, 1.0);
            // Widths are estimates within a few per cent: a label may touch the edge.
            constexpr double kTouch_px = 4.0;
            CHECK(room.low.x() >= -kTouch_px);
            CHECK(room.low.y() >= -kTouch_px);
            CHECK(room.high.x() <= size.x() + kTouch_px);
            CHECK(room.high.y() <= size.y() + kTouch_px);
        }
    }
}

TEST_CASE("a question without a picture has an empty figure") {
    const Question question;
    CHECK_FALSE(has_figure(question));
    CHECK(question_figure(question, {400.0, 200.0}).shapes.empty());
}
