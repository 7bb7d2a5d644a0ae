#pragma once
// JSON on the output, and nothing beside it. assets/schemas/ says what each verb writes.

#include <nlohmann/json.hpp>

#include <iosfwd>
#include <optional>
#include <string>
#include <string_view>

namespace steelyard::cli {

using Json = nlohmann::ordered_json;

/// What a verb calls its output, so that another program knows it again: "steelyard.solve/1". The
/// number grows when a key goes or changes its meaning; a further key leaves it as it is.
std::string format_name(std::string_view verb);

/// A value as indented text with a line break. A list of plain values takes one line. A number has
/// the fewest digits that read back to the very same double and is never -0. Bytes that are no
/// UTF-8, such as a name may hold, are replaced, so that any reader can parse it.
std::string json_text(const Json& value);

/// The same in one line, without a line break.
std::string json_line(const Json& value);

/// The number, or null.
Json or_null(const std::optional<double>& value);

/// How rows are written.
enum class RowStyle {
    document, ///< one JSON value: {"format": ..., "questions": [...]}, a line for each row
    lines,    ///< JSON Lines: each row with a format of its own
};

/// Rows that are written as they come, so that a long list takes no more memory than a short one.
/// Nothing is written before the first row or the end.
class JsonRows {
public:
    /// @param list  key of the rows in a document: "questions"
    JsonRows(std::ostream& out, std::string_view verb, std::string_view list, RowStyle style);

    void add(const Json& row);

    /// Ends a document. @param rest  further keys of it, an object; lines leave them out
    void finish(const Json& rest = Json::object());
    bool begun() const { return begun_; }

private:
    void begin();

    std::ostream& out_;
    std::string verb_;
    std::string list_;
    RowStyle style_;
    bool begun_ = false;
};

} // namespace steelyard::cli
