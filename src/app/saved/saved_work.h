#pragma once
// What the window remembers from one run to the next, so that nothing is lost on a crash or a kill.

#include "scene/palette.h"
#include "setup/lever_setup.h"

#include <filesystem>
#include <optional>
#include <string>

namespace steelyard::app {

/// How the person likes the window.
struct Preferences {
    scene::Look look = scene::Look::light;
    setup::UnitSystem units = setup::UnitSystem::si;
    double text_size = 1.0; ///< 0.8 to 2.5
    int width_px = 1280;
    int height_px = 720;
};

/// What was on the bench.
struct SavedBench {
    setup::LeverSetup setup;
    std::optional<double> hand_N;
};

/// A folder of the person's own: $XDG_STATE_HOME/steelyard, else ~/.local/state/steelyard.
class SavedWork {
public:
    explicit SavedWork(std::filesystem::path folder) : folder_(std::move(folder)) {}

    /// The folder by the XDG Base Directory Specification; empty when no home is known, and then
    /// nothing is remembered.
    static std::filesystem::path usual_folder();

    /// What was remembered; defaults where there is nothing, or nothing that can be read.
    Preferences load_preferences() const;
    std::optional<SavedBench> load_bench() const;

    /// Written whole or not at all.
    /// @return why it could not be written; empty when it was
    std::string save(const Preferences& preferences, const SavedBench& bench) const;

private:
    std::filesystem::path folder_;
};

} // namespace steelyard::app
