#pragma once
// The answers of what-if in words: values of a change, and what stops a search.

#include "mechanics/whatif/whatif.h"
#include "setup/units.h"

#include <string>
#include <string_view>

namespace steelyard::setup {

/// A value of a change with its unit: "12.5 kg", "35°".
std::string change_value_text(double value, mechanics::ChangeUnit unit, UnitSystem system);

/// How far a value is from the present one, and which way: "2.5 kg less", "9.1 cm nearer".
std::string change_step_text(const mechanics::Change& change, const mechanics::ChangeRange& range,
                             double value, UnitSystem system);

/// The word by which a command names a kind of change: "load", "angle", "distance", "place",
/// "pulley", "slack", "tempo".
std::string_view change_word(const mechanics::Change& change);

/// What stops a search, as a phrase after "because": "the body would topple".
std::string limit_phrase(const mechanics::Limit& limit);

/// The kind of a limit as one word: "range_end", "would_topple".
std::string_view limit_word(mechanics::LimitKind kind);

} // namespace steelyard::setup
