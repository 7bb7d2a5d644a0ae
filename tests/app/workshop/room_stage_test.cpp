#include "app/workshop/room_stage.h"
#include "catch.h"

#include <algorithm>
#include <string>

using namespace steelyard;
using namespace steelyard::app;
using scene::Label;

namespace {

lesson::LessonStage stage_of(const std::string& step) {
    const std::string text =
        "kind = \"lesson\"\nname = \"x\"\ndescription = \"y\"\n[[step]]\nprompt = \"p\"\n" + step;
    const auto lesson = lesson::parse_lesson(text, "x.lesson.toml", lesson::setup_folders({}));
    INFO((lesson ? std::string() : setup::to_text(lesson.error())));
    REQUIRE(lesson.has_value());
    return lesson->steps.front().stage;
}

scene::Drawing drawn(const lesson::LessonStage& stage, const lesson::StageMarks& hidden) {
    const auto solved = lesson::solve_stage(stage);
    REQUIRE(solved.has_value());
    RoomStage room;
    room.without = lesson::with_tell_tales(hidden);
    return draw_room_stage(*solved, {}, room);
}

/// Everything that is drawn but words, as text: two drawings of which one gives nothing away that
/// the other does not are equal in it.
std::string marks_of(const scene::Drawing& drawing) {
    std::string text;
    const auto add = [&text](const scene::Point& at) {
        text += std::to_string(at.x()) + "," + std::to_string(at.y()) + " ";
    };
    for (const scene::Shape& shape : drawing.shapes) {
        if (const auto* line = std::get_if<scene::Line>(&shape)) {
            add(line->from);
            add(line->to);
        } else if (const auto* head = std::get_if<scene::Triangle>(&shape)) {
            add(head->a);
            add(head->b);
        } else if (const auto* box = std::get_if<scene::Box>(&shape)) {
            add(box->centre);
            add(box->size_px);
        } else if (const auto* arc = std::get_if<scene::Arc>(&shape)) {
            text += std::to_string(arc->from_rad) + "-" + std::to_string(arc->to_rad) + " ";
        }
    }
    return text;
}

bool says(const scene::Drawing& drawing, const std::string& part) {
    return std::any_of(drawing.shapes.begin(), drawing.shapes.end(), [&](const auto& shape) {
        const auto* label = std::get_if<Label>(&shape);
        return label != nullptr && label->text.find(part) != std::string::npos;
    });
}

} // namespace

TEST_CASE("type before a room is never under 43 px on 1080 lines, and grows with the window") {
    // The size that our own look asks for: nothing under 43 px on 1080 lines.
    const auto smallest_px = [](double height_px) {
        return scene::text_height_px(scene::TextSize::body) * room_type_scale(height_px);
    };
    CHECK(smallest_px(1080.0) >= 43.0);
    CHECK(smallest_px(1080.0) < 44.0);
    CHECK(smallest_px(720.0) >= 43.0 * 720.0 / 1080.0);
    CHECK(smallest_px(2160.0) >= 86.0);
    for (const auto* step : {"setup = \"seesaw\"\n", "setup = \"hinge-bar-near\"\n"})
        for (const scene::Shape& shape : drawn(stage_of(step), {}).shapes)
            if (const auto* label = std::get_if<Label>(&shape))
                CHECK(label->size != scene::TextSize::caption);
}

TEST_CASE("a hidden effort cannot be read off the drawing: any effort looks the same") {
    const std::string heavier =
        "setup = \"seesaw\"\n[[step.change]]\npart = \"effort\"\nat = \"3 m\"\n";
    const lesson::LessonStage seesaw = stage_of(heavier);
    lesson::LessonStage heavy = seesaw;
    // A heavier plank whose centre is off the axis asks for another effort, but is hidden itself.
    auto& lever = std::get<setup::LeverSetup>(heavy.setup).lever;
    lever.own_weight.centre_at_m = 2.0;
    lever.own_weight.mass_kg = 20.0;
    const lesson::StageMarks hidden{lesson::StageMark::effort, lesson::StageMark::own_weight};
    const scene::Drawing one = drawn(seesaw, hidden);
    CHECK(marks_of(one) == marks_of(drawn(heavy, hidden)));
    CHECK_FALSE(marks_of(drawn(seesaw, {})) == marks_of(drawn(heavy, {})));
    CHECK_FALSE(says(one, "230"));
    CHECK_FALSE(says(one, "reaction"));
    CHECK(says(drawn(seesaw, {}), "230"));
}

TEST_CASE("hidden loads all have arrows of one length") {
    const auto with_mass = [](const std::string& mass) {
        return stage_of("setup = \"seesaw\"\n[[step.change]]\npart = \"heavier child\"\nmass = \"" +
                        mass + "\"\n");
    };
    const lesson::StageMarks hidden{lesson::StageMark::loads, lesson::StageMark::effort};
    const scene::Drawing light = drawn(with_mass("20 kg"), hidden);
    CHECK(marks_of(light) == marks_of(drawn(with_mass("40 kg"), hidden)));
    CHECK_FALSE(says(light, "kg"));
}

TEST_CASE("hidden torques of a body leave no number, arc or spindle of them") {
    const lesson::LessonStage stage =
        stage_of("setup = \"hinge-bar-near\"\naxis = \"lumbar_flexion\"\n");
    CHECK(says(drawn(stage, {}), "N·m"));
    CHECK_FALSE(says(drawn(stage, {lesson::StageMark::torques}), "N·m"));
    const scene::Drawing no_sizes = drawn(stage, {lesson::StageMark::loads});
    CHECK_FALSE(says(no_sizes, "392"));
    CHECK(says(no_sizes, "barbell"));
    CHECK_FALSE(says(drawn(stage, {lesson::StageMark::arms}), "arm"));
}
