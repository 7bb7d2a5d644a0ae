#pragma once
// Reads muscles with their moment arms and who moves what: assets/muscles/*.toml, one file for each
// joint.
//
//     [[action]]                        # a hinge turned one way, and who does it
//     name = "flexion"
//     hinge = "elbow_flexion"
//     turns = "flexion"
//     where = [{ hinge = "shoulder_flexion", from = "0 deg", to = "45 deg" }]  # optional
//     movers = ["biceps", "brachialis"] # without any one of them no force is named
//     helpers = ["brachioradialis"]     # optional
//     source = "..."
//     mark = "verified"
//
//     [[muscle]]
//     name = "biceps"
//     group = "elbow flexors"
//     class_note = "..."                # where books differ about the class of its lever; optional
//     hinge = "elbow_flexion"           # left out for the jaw, which the body does not have
//
//     [[muscle.arm]]                    # one for each source, the preferred one first
//     source = "author, year, place"
//     mark = "verified"                 # or "verified-2" (a second-hand copy), "memory"
//     basis = "measured"                # or "open model", "illustrative" (always from memory)
//     holds = [{ hinge = "shoulder_abduction", from = "-20 deg", to = "20 deg" }]
//                                       # poses in which it was found; left out: all
//     positive = "flexion"              # which way an arm above zero turns the joint
//     angle = "flexion"                 # which way the angle counts; left out: the hinge's own
//     polynomial = [14.66, 0.45322]     # c0 first, as printed, in
//     arm_unit = "mm"
//     angle_unit = "deg"
//     valid = ["0 deg", "140 deg"]
//     # or:  table = [{ angle = "0 deg", arm = "42.55 mm" }, ...]   or:  constant = "5 cm"
//     spread = "1.3 mm"                 # one standard deviation between people, if stated
//
//     [[muscle.arms_hold]]              # the same for all arms that say nothing of their own
//     hinge = "shoulder_abduction"
//     from = "-20 deg"
//     to = "20 deg"
//
//     [muscle.line]
//     convention = "attachment points"  # or "fixed angle to the bone"
//     origin = { segment = "upper_arm", along = 0.1, forward = "2 cm" }
//     insertion = { segment = "forearm", along = 0.17, forward = "0.5 cm" }
//     wrap = { radius = "1.8 cm", side = "extension" }        # attachment points only, optional
//     # fixed angle:  angle = "50 deg", turns = "extension", no origin
//     source = "..."
//     mark = "memory"
//
//     [muscle.cross_section]
//     area_cm2 = 14.9
//     by = "dissection"                 # or "imaging": which specific tension goes with it
//     source = "..."
//     mark = "verified-2"
//
// A mover without a [[muscle]] of its own is a muscle known by name alone.

#include "mechanics/muscle/muscle.h"
#include "setup/toml/input_error.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::setup {

/// Muscles from a text.
/// @param file  the name that errors are to give
tl::expected<std::vector<mechanics::Muscle>, InputError> parse_muscles(std::string_view text,
                                                                       const std::string& file);

/// Muscles of one file.
tl::expected<std::vector<mechanics::Muscle>, InputError>
read_muscle_file(const std::filesystem::path& path);

/// Muscles of every *.toml of a folder, files by name.
tl::expected<std::vector<mechanics::Muscle>, InputError>
read_muscle_folder(const std::filesystem::path& folder);

/// The muscles that come with the program.
tl::expected<std::vector<mechanics::Muscle>, InputError> shipped_muscles();

/// "verified", "verified-2", "memory": how a file spells it.
std::string_view mark_name(mechanics::Evidence mark);

/// "measured", "open model", "illustrative": how a file spells it, and what stands beside every
/// number that rests on it.
std::string_view basis_name(mechanics::Basis basis);

/// A source with its label: "Pigeon, Yahia & Feldman 1996, ... (measured)".
std::string labelled_source(const mechanics::ArmSource& source);

} // namespace steelyard::setup
