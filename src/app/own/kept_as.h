#pragma once
// How what is on a stage stands to what is kept of it.

#include "app/own/own_setups.h"

namespace steelyard::app {

struct KeptAs {
    std::optional<OwnFile> file; ///< the own file in which it was kept, or from which it came
    /// The setup as text when it was last put on the stage or kept; empty = changed since.
    std::string text;

    bool operator==(const KeptAs&) const = default;
};

/// True where something would be lost if another setup took its place.
inline bool is_changed(const KeptAs& kept, const setup::Setup& setup) {
    return setup::write_setup(setup) != kept.text;
}

} // namespace steelyard::app
