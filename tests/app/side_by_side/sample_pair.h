#pragma once
// Two held exercises whose numbers can be worked by hand: a crate held near and one held far.

#include "app/side_by_side/side_by_side_model.h"
#include "setup/files/data_folder.h"
#include "setup/setup.h"

#include <string>
#include <thread>

namespace steelyard::app {

inline setup::BodySetup shipped_exercise(const std::string& name) {
    const auto folder = setup::data_folder() / "assets/setups/body";
    return std::get<setup::BodySetup>(
        setup::read_setup(folder / (name + std::string(setup::kSetupEnding))).value());
}

inline SideBySideModel sample_pair() {
    return make_side_by_side(shipped_exercise("crate-near"), shipped_exercise("crate-far"));
}

/// Everything that undo restores, exact to the last bit.
inline std::string exact_text(const ComparedState& state) {
    std::string text = setup::write_body_setup(state.a) + setup::write_body_setup(state.b);
    for (const mechanics::Cap& limit : state.limits)
        text += std::to_string(static_cast<int>(limit.hinge)) + std::to_string(limit.most_Nm);
    return text;
}

/// Tries changes for the model's goal, as frames would; few of them, so that tests are quick.
inline mechanics::RankedWays searched(const SideBySideModel& model,
                                      const std::vector<mechanics::Change>& changes) {
    WaySearch search;
    search.ask(model.state.b.exercise, goal_of(model), changes);
    while (search.is_searching()) {
        search.advance();
        std::this_thread::yield();
    }
    return search.found();
}

} // namespace steelyard::app
