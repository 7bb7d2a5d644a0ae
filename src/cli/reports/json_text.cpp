#include "cli/reports/json_text.h"

#include "setup/units/format_quantity.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <ostream>

namespace steelyard::cli {
namespace {

constexpr std::size_t kIndent = 2;

bool is_plain(const Json& value) {
    return !value.is_structured();
}

/// Writes a value in one line or indented.
class JsonWriter {
public:
    explicit JsonWriter(bool indents) : indents_(indents) {}

    void write(const Json& value) {
        if (value.is_structured() && !value.empty())
            write_members(value);
        else if (value.is_number_float())
            text_ += std::isfinite(value.get<double>()) ? setup::exact_number(value.get<double>())
                                                        : "null";
        else
            text_ += value.dump(-1, ' ', false, Json::error_handler_t::replace);
    }

    std::string take() { return std::move(text_); }

private:
    void write_members(const Json& value) {
        const bool broken =
            indents_ && (value.is_object() || !std::all_of(value.begin(), value.end(), is_plain));
        text_ += value.is_object() ? '{' : '[';
        ++depth_;
        bool first = true;
        for (const auto& [key, member] : value.items()) {
            if (!first)
                text_ += broken || !indents_ ? "," : ", ";
            first = false;
            if (broken)
                begin_line();
            if (value.is_object()) {
                write(Json(key));
                text_ += indents_ ? ": " : ":";
            }
            write(member);
        }
        --depth_;
        if (broken)
            begin_line();
        text_ += value.is_object() ? '}' : ']';
    }

    void begin_line() {
        text_ += '\n';
        text_.append(kIndent * depth_, ' ');
    }

    bool indents_;
    std::string text_;
    std::size_t depth_ = 0;
};

std::string written(const Json& value, bool indents) {
    JsonWriter writer(indents);
    writer.write(value);
    return writer.take();
}

} // namespace

std::string format_name(std::string_view verb) {
    return fmt::format("steelyard.{}/1", verb);
}

std::string json_text(const Json& value) {
    return written(value, true) + '\n';
}

std::string json_line(const Json& value) {
    return written(value, false);
}

Json or_null(const std::optional<double>& value) {
    return value ? Json(*value) : Json();
}

JsonRows::JsonRows(std::ostream& out, std::string_view verb, std::string_view list, RowStyle style)
    : out_(out), verb_(verb), list_(list), style_(style) {}

void JsonRows::begin() {
    if (!begun_ && style_ == RowStyle::document)
        out_ << fmt::format("{{\"format\":\"{}\",\"{}\":[", format_name(verb_), list_);
    begun_ = true;
}

void JsonRows::add(const Json& row) {
    const bool first = !begun_;
    begin();
    if (style_ == RowStyle::lines) {
        Json named{{"format", format_name(verb_ + ".row")}};
        named.update(row);
        out_ << json_line(named) << '\n';
        return;
    }
    out_ << (first ? "\n" : ",\n") << json_line(row);
}

void JsonRows::finish(const Json& rest) {
    begin();
    if (style_ == RowStyle::lines)
        return;
    out_ << "\n]";
    for (const auto& [key, value] : rest.items())
        out_ << ",\n" << json_line(Json(key)) << ':' << json_line(value);
    out_ << "}\n";
}

} // namespace steelyard::cli
