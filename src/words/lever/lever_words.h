#pragma once
// What a lever's result is called in words: the same sentences in the window, the terminal, the
// handout and the caption under a drawing.

#include "mechanics/lever/lever_solve.h"
#include "setup/units/units.h"

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::words {

/// What can be read off a solved lever and unfolded, see lever_steps.h.
enum class LeverReading {
    lever_class,
    effort,
    effort_arm,
    load_torque, ///< of all loads and the own weight
    load_arm,
    ideal_advantage,
    actual_advantage,
    reaction,
    found_load, ///< the size of the load that is sought
    travel,     ///< what is won in force is lost in distance
    friction,   ///< what the axle takes
};

/// "Effort arm": a reading of this lever as a heading; of two supports the names of the supports.
std::string name_of(LeverReading reading, const mechanics::Lever& lever);

/// What can be read off a lever, in the order in which the readings build on each other.
std::vector<LeverReading> readings_of(const mechanics::Lever& lever);

/// One sentence about what the reading is.
std::string_view meaning_of(LeverReading reading);

/// "First class", "Second class", "Third class" or "No class".
std::string class_name(const mechanics::LeverResult& result);

/// "second-class lever", "lever without a class".
std::string class_lever(const mechanics::LeverResult& result);

/// Why: "The load (boat) is between axis and effort."
std::string class_sentence(const mechanics::Lever& lever, const mechanics::LeverResult& result);

/// The size of the load that is sought: "18 kg (177 N)" of a mass, "177 N", "20 N·m"; "none" where
/// no size balances.
std::string found_load_text(const mechanics::Lever& lever, const mechanics::LeverResult& result,
                            setup::UnitSystem units);

/// What the class usually means: "It wins force and loses distance."
std::string class_promise(mechanics::LeverClass lever_class);

/// Everything that a learner should be told about this solution beyond its numbers, most important
/// first: special cases, a class that the advantage contradicts, friction that locks, an effort of
/// zero. Empty for a plain lever.
std::vector<std::string> lever_messages(const mechanics::Lever& lever,
                                        const mechanics::LeverResult& result,
                                        setup::UnitSystem units);

/// The whole result in two or three sentences, for a caption and for readers who cannot see the
/// drawing.
std::string lever_summary(const mechanics::Lever& lever, const mechanics::LeverResult& result,
                          setup::UnitSystem units);

/// Fixed words for machines, as in the output of `steelyard solve --json`: "ok",
/// "effort_through_axis"; "axis_between".
std::string_view word_of(mechanics::LeverStatus status);
std::string_view word_of(mechanics::ClassReason reason);

} // namespace steelyard::words
