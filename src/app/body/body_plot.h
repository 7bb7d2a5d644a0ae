#pragma once
// The curves of an exercise as a plot, as text and as numbers to take away.

#include "app/body/body_model.h"
#include "scene/plot/curve_plot.h"
#include "setup/units/units.h"

#include <optional>
#include <string>

namespace steelyard::app {

/// What is plotted over the range of motion.
enum class PlotSubject {
    torque,    ///< of the muscles at every axis
    load,      ///< torque of the resistance alone at every axis: the resistance curve
    muscles,   ///< pull of the muscles of the chosen axis, and the joint's reaction
    advantage, ///< resistance ÷ muscles' pull at the chosen axis
};
inline constexpr PlotSubject kPlotSubjects[] = {PlotSubject::torque, PlotSubject::load,
                                                PlotSubject::muscles, PlotSubject::advantage};

/// The word by which a subject is chosen: "torque".
const char* word_of(PlotSubject subject);

/// What a subject shows, in words: "muscles at the elbow".
std::string title_of(const BodyModel& model, PlotSubject subject);

/// Torques turned so that each curve's peak is above zero: below it the torque goes the other way.
/// @param band  spread over bodies of the chosen axis's torque, signed like it; may be null
scene::CurvePlot make_plot(const BodyModel& model, PlotSubject subject, setup::UnitSystem units,
                           const scene::PlotBand* band, double text_scale);

/// The values at a place of the range in a line: "at 62°: elbow 32.1 N·m, shoulder 10.0 N·m".
std::string values_at(const BodyModel& model, PlotSubject subject, setup::UnitSystem units,
                      double progress);

/// All curves over the range, one row for each place, as comma-separated values in SI units.
std::string curves_csv(const BodyModel& model);

/// The hinge whose angle runs along the plot: the chosen one, or, when the repetition leaves that
/// still, the one that it moves farthest.
mechanics::Hinge range_hinge(const BodyModel& model);

} // namespace steelyard::app
