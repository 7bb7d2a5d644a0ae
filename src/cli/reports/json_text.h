#pragma once
// JSON on the output, and nothing beside it.

#include <nlohmann/json.hpp>

#include <string>

namespace steelyard::cli {

/// A value as indented text with a line break. Bytes that are no UTF-8, such as a name may hold,
/// are replaced, so that any reader can parse it.
inline std::string json_text(const nlohmann::ordered_json& value) {
    constexpr int kIndent = 2;
    return value.dump(kIndent, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

} // namespace steelyard::cli
