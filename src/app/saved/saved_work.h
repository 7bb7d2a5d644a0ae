#pragma once
// What the window remembers from one run to the next, so that nothing is lost on a crash or a kill.

#include "app/own/kept_as.h"
#include "app/platform/wishes.h"
#include "scene/palette.h"
#include "setup/body/body_setup.h"
#include "setup/lever/lever_setup.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

/// How the person likes the window.
struct Preferences {
    scene::Look look = scene::Look::light;
    setup::UnitSystem units = setup::UnitSystem::si;
    double text_size = 1.0; ///< 0.8 to 2.5
    bool less_motion = false;
    std::string place; ///< word of the place that was open last; empty = none yet
    bool ended_well =
        true; ///< false while a window is open, so that a killed one is taken up again
    bool shown_around = false; ///< the look around has been offered and begun or left
    int width_px = 1280;
    int height_px = 720;
};

/// What the person wants after the system's wishes have changed: what agreed with the wish before
/// goes on following it, what was chosen otherwise stays.
Preferences following(Preferences preferences, const SystemWishes& before, const SystemWishes& now);

/// What was on the bench.
struct SavedBench {
    setup::LeverSetup setup;
    std::optional<double> hand_N;
    KeptAs kept = {};
};

/// What was on the body stage.
struct SavedBody {
    setup::BodySetup setup;
    double progress = 0.0; ///< along the path, 0 to 1
    KeptAs kept = {};
};

/// Two levers that stood side by side.
struct SavedLevers {
    setup::LeverSetup a;
    setup::LeverSetup b;
};

/// What stood side by side.
struct SavedPair {
    setup::BodySetup a;
    setup::BodySetup b;
    double progress = 0.0;             ///< along both paths, 0 to 1
    std::optional<SavedLevers> levers; ///< empty = none were compared
    bool shows_levers = false;         ///< the levers were looked at last
};

/// A folder of the person's own: $XDG_STATE_HOME/steelyard, else ~/.local/state/steelyard.
class SavedWork {
public:
    explicit SavedWork(std::filesystem::path folder) : folder_(std::move(folder)) {}

    /// The folder by the XDG Base Directory Specification; empty when no home is known, and then
    /// nothing is remembered.
    static std::filesystem::path usual_folder();

    /// A sentence for each file that is there and cannot be one of ours: a folder, a pipe, one that
    /// may not be read. It is passed over.
    std::vector<std::string> faults() const;

    /// What was remembered; defaults where there is nothing, or nothing that can be read.
    Preferences load_preferences() const;
    std::optional<SavedBench> load_bench() const;
    std::optional<SavedBody> load_body() const;
    std::optional<SavedPair> load_pair() const;

    /// Each written whole or not at all.
    /// @return why it could not be written; empty when it was
    std::string save_preferences(const Preferences& preferences) const;
    std::string save_bench(const SavedBench& bench) const;
    std::string save_body(const SavedBody& body) const;
    std::string save_pair(const SavedPair& pair) const;

private:
    std::string write(const char* name, const std::string& text) const;

    std::filesystem::path folder_;
};

} // namespace steelyard::app
