#pragma once
// What several places have in common: choosing from the shelf, and saying why nothing is there.

#include "app/place/place.h"
#include "app/shelf/shelf_view.h"

#include <functional>

namespace steelyard::app {

/// The shelf of a place, for one kind of setups.
template <typename Kind> struct Choosable {
    ShelfState state;
    Shelf<Kind> offered; ///< what stands on it while it is open
    /// Changed and not kept when another was put on the stage.
    std::optional<Shelved<Kind>> left_behind;
    std::filesystem::path removed; ///< what was removed last; empty = nothing
    std::string trouble = {};      ///< why something could not be removed or put back
};

/// Notes what is about to leave the stage, when it was changed and not kept, so that it can be
/// chosen again.
template <typename Kind>
void leave_behind(const Kind& setup, const KeptAs& kept, Choosable<Kind>& shelf) {
    if (is_changed(kept, setup))
        shelf.left_behind = {setup, Origin::left_behind, kept.file};
}

/// How a setup stands to what is kept of it when it comes from the shelf.
template <typename Kind> KeptAs kept_as_shelved(const Shelved<Kind>& one) {
    return {one.file,
            one.origin == Origin::left_behind ? std::string() : setup::write_setup(one.setup)};
}

/// What was chosen: a setup, and its file when it is an own one.
template <typename Kind> using PutOnStage = std::function<void(const Shelved<Kind>&)>;

/// How something new is begun instead of chosen.
struct BeginNew {
    const char* word = nullptr; ///< null = nothing can be begun here
    std::function<void()> begin;
};

/// Runs a frame of a place whose shelf is open.
PlaceFrame run_shelf(const PlaceInput& input, const std::string& heading, const BeginNew& anew,
                     Choosable<setup::LeverSetup>& shelf, const PutOnStage<setup::LeverSetup>& put);
PlaceFrame run_shelf(const PlaceInput& input, const std::string& heading, const BeginNew& anew,
                     Choosable<setup::BodySetup>& shelf, const PutOnStage<setup::BodySetup>& put);

/// Runs a frame of a shelf with the ways to stand, sit, lie and hang.
/// @param begin  what to do with the one that was chosen
PlaceFrame run_stances(const PlaceInput& input, ShelfState& state,
                       const std::function<void(const setup::BodySetup&)>& begin);

/// Says in a place's own room why there is nothing to show.
void draw_trouble(const PlaceInput& input, const std::string& sentence);

} // namespace steelyard::app
