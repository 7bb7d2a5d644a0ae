#pragma once
// Answers as objects of JSON Lines. For export and import.

#include "learner/record/exchange/answer_cells.h"

#include <nlohmann/json.hpp>

namespace steelyard::learner {

using Json = nlohmann::ordered_json;

/// An answer as an object, its members in the order of answer_table().
Json json_of(const Answer& answer);

/// Reads an answer from an object. A member that may be absent leaves the default.
tl::expected<Answer, Fault> answer_from(const Json& object);

// --- members of an object ------------------------------------------------------------------------

/// A member that is there and not null.
const Json* member_of(const Json& object, std::string_view name);
/// Its whole number; empty where there is none, or one that no 64 bits hold.
std::optional<std::int64_t> whole_of(const Json* member);
std::optional<double> number_of(const Json* member);
std::optional<std::string> words_of(const Json* member);

} // namespace steelyard::learner
