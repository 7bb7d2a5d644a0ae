#include "cli/verbs/solve_body.h"

#include "cli/reports/body_report.h"
#include "cli/reports/json_text.h"
#include "setup/muscle/muscle_file.h"

#include <ostream>

namespace steelyard::cli {
namespace {

/// Steps of the curves: one for each per cent of the path.
constexpr std::size_t kSweepSteps = 101;

tl::expected<std::vector<HingeCurves>, mechanics::MechanicsError>
curves_of(const setup::BodySetup& setup, const std::vector<mechanics::Muscle>& muscles) {
    std::vector<HingeCurves> curves;
    for (const mechanics::Hinge axis : setup.axes) {
        const auto shown = words::shown_muscles(setup, muscles, axis);
        if (shown.empty())
            continue;
        const mechanics::Exercise& exercise = setup.exercise;
        auto steps = sweep_muscles(exercise.body_case, exercise.path, exercise.tempo, axis, shown,
                                   mechanics::usual_sharing(shown), kSweepSteps);
        if (!steps)
            return tl::make_unexpected(steps.error());
        curves.push_back({axis, std::move(*steps)});
    }
    return curves;
}

std::vector<mechanics::Hinge> every_hinge() {
    std::vector<mechanics::Hinge> hinges;
    for (const mechanics::HingeInfo& info : mechanics::all_hinges())
        hinges.push_back(info.hinge);
    return hinges;
}

ExitStatus refuse(const mechanics::MechanicsError& error, const setup::BodySetup& setup,
                  const Streams& streams) {
    streams.err << to_text(setup::placed_error(error, setup.source)) << '\n';
    return ExitStatus::bad_input;
}

} // namespace

ExitStatus solve_body_setup(const setup::BodySetup& setup, const SolveBodyOptions& options,
                            const Streams& streams) {
    const auto muscles = setup::shipped_muscles();
    if (!muscles) {
        streams.err << to_text(muscles.error()) << '\n';
        return ExitStatus::failed;
    }
    const auto place = words::hardest_place(setup);
    if (!place)
        return refuse(place.error(), setup, streams);
    const auto reading = words::read_body(setup, *muscles, every_hinge(), *place);
    if (!reading)
        return refuse(reading.error(), setup, streams);
    std::vector<HingeCurves> curves;
    if (options.sweep && setup.exercise.path) {
        auto found = curves_of(setup, *muscles);
        if (!found)
            return refuse(found.error(), setup, streams);
        curves = std::move(*found);
    }
    if (options.json)
        streams.out << json_text(body_json(setup, *reading, curves));
    else
        streams.out << body_report(setup, *reading, curves);
    return ExitStatus::ok;
}

} // namespace steelyard::cli
