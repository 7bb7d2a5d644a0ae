#pragma once
// The drawing of the body's stage: the exercise with its heading, the plot, and rings and a caption
// where the hand is. Kept from frame to frame, and made anew only where something has changed.

#include "app/body/body_input.h"
#include "app/body/plot_panel.h"
#include "scene/body/body_drawing.h"

namespace steelyard::app {

/// How the exercise is looked at, besides from where.
struct BodyLooks {
    bool close_up = false;        ///< the chosen joint fills the stage
    bool resting_muscles = false; ///< antagonists are drawn, faintly

    bool operator==(const BodyLooks&) const = default;
};

/// What the exercise's part of the drawing is made from.
struct ExerciseFrom {
    BodyStamp model;
    scene::BodyStage stage;
    setup::UnitSystem units = setup::UnitSystem::si;
    double text_scale = 1.0;
    scene::Point bar_end_px = scene::Point::Zero();
    BodyLooks looks;

    bool operator==(const ExerciseFrom&) const = default;
};

/// What the plot and the marks of the hand are made from, besides the exercise.
struct MarksFrom {
    std::optional<BodyPart> chosen;
    std::optional<BodyPart> hovered;
    BodyHold hold = BodyHold::place; ///< of the hovered grip
    bool held = false;
    int plot = 0; ///< PlotPanel::made_for
    std::optional<double> plot_hover;

    bool operator==(const MarksFrom&) const = default;
};

/// The exercise's sentence in one or two lines, beside the plot.
struct BodyHeading {
    std::string first;
    std::string second;
    double bar_top_px = 0.0; ///< of the numbers below it
};
struct HeadingFrom {
    int version = 0; ///< of the model
    scene::Point stage_px = scene::Point::Zero();
    double text_scale = 1.0;

    bool operator==(const HeadingFrom&) const = default;
};

/// The drawing between frames.
struct BodyPicture {
    scene::Drawing drawing;
    /// Of the words while the exercise is played or gone through on one stage.
    scene::LabelSides sides;
    std::size_t of_exercise = 0; ///< so many shapes at its beginning are the exercise
    std::optional<ExerciseFrom> exercise_from;
    std::optional<MarksFrom> marks_from;
    Kept<HeadingFrom, BodyHeading> heading;
};

/// What is to be drawn.
struct BodyShown {
    const BodyModel& model;
    const scene::BodyStage& stage;
    setup::UnitSystem units;
    const PlotPanel* plot; ///< null where there is no room for it, or nothing moves
    scene::Point bar_end_px = scene::Point::Zero(); ///< lower right corner of a part's numbers
    BodyLooks looks;
};

/// Where on the stage the things of a close-up stand.
scene::CloseUp close_up_places(const Style& style, const Layout& layout,
                               const BodyHeading& heading);

/// Room below which the numbers of a part and the stage begin.
const BodyHeading& keep_heading(const Style& style, const Layout& layout, const BodyModel& model,
                                BodyPicture& picture);

/// Makes anew what has changed.
void keep_picture(const Style& style, const Layout& layout, const BodyShown& shown,
                  BodyStageState& hand, BodyPicture& picture);

} // namespace steelyard::app
