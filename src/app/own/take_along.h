#pragma once
// What is on a stage as a picture to take along: still, or moving through its repetition.

#include "app/background_work.h"
#include "lesson/lesson.h"
#include "mechanics/muscle/muscle.h"
#include "publish/pictures/picture_size.h"
#include "publish/tools.h"
#include "scene/palette.h"

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace steelyard::app {

/// A kind of picture, by the ending of its file.
struct PictureKind {
    const char* word;   ///< as it is offered
    const char* ending; ///< ".png"
    bool moves = false;
};

/// Those that this edition can make of a setup.
std::vector<PictureKind> picture_kinds(const setup::Setup& setup, const publish::Tools& tools);

/// Whether its torques over a range can stand beside it.
bool can_have_plot(const setup::Setup& setup);

/// How a picture lies.
struct PictureShape {
    const char* word; ///< as it is offered
    publish::PictureSize size;
};
/// For a slide, for a page that shows squares, for a telephone held upright.
inline constexpr PictureShape kPictureShapes[] = {
    {"wide", {1280, 720}}, {"square", {1080, 1080}}, {"upright", {1080, 1350}}};

/// What a picture is made from.
struct PictureWish {
    lesson::LessonStage stage; ///< its setup, the place on its path and the view
    std::vector<mechanics::Muscle> muscles;
    scene::Look look = scene::Look::light;
    publish::PictureSize size{1280, 720};
    bool has_sheet = true;        ///< of a still one; false = see-through behind what is drawn
    bool plot = false;            ///< of an exercise that moves: its torques over the range beside
    std::filesystem::path folder; ///< is made if it is not there
    publish::Tools tools;
};

/// Makes pictures beside the frames, one at a time.
struct TakeAlong {
    std::unique_ptr<BackgroundWork<std::filesystem::path>> work =
        std::make_unique<BackgroundWork<std::filesystem::path>>();
    std::string said; ///< where the last one is, or why there is none
    bool is_fault = false;

    bool is_busy() const { return work->running(); }
};

/// Begins to make one; nothing happens while another is made.
void start(TakeAlong& taking, const PictureKind& kind, PictureWish wish);

/// Notices that it is made.
void look_after(TakeAlong& taking);

} // namespace steelyard::app
