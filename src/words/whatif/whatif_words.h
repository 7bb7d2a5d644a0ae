#pragma once
// The answers of what-if in words: values of a change, and what stops a search.

#include "mechanics/whatif/whatif.h"
#include "setup/units/units.h"

#include <string>
#include <string_view>

namespace steelyard::words {

/// A value of a change with its unit: "12.5 kg", "35°".
std::string change_value_text(double value, mechanics::ChangeUnit unit, setup::UnitSystem system);

/// How far a value is from the present one, and which way: "2.5 kg less", "9.1 cm nearer".
std::string change_step_text(const mechanics::Change& change, const mechanics::ChangeRange& range,
                             double value, setup::UnitSystem system);

/// Why a change cannot give the wanted torque, as a sentence: "It cannot be reached. The nearest is
/// 12.0 N·m with 0.300 m, because the body would topple."
/// @param at    setting that comes nearest; empty when no setting is possible
/// @param unit  of the setting
std::string refusal_text(const std::optional<mechanics::ChangedPeak>& at,
                         const mechanics::Limit& limit, mechanics::ChangeUnit unit,
                         setup::UnitSystem system);

/// The word by which a command names a kind of change: "load", "angle", "distance", "place",
/// "pulley", "slack", "tempo".
std::string_view change_word(const mechanics::Change& change);

/// What stops a search, as a phrase after "because": "the body would topple".
std::string limit_phrase(const mechanics::Limit& limit);

/// The kind of a limit as one word: "range_end", "would_topple".
std::string_view limit_word(mechanics::LimitKind kind);

} // namespace steelyard::words
