#include "setup/toml/toml_reader.h"

#include "setup/toml/letters.h"
#include "setup/units/format_quantity.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::setup {
namespace {

constexpr std::size_t kLongestShown = 60;
/// A table of a thousand unknown keys is one mistake, not a thousand.
constexpr int kMostUnknownKeys = 10;
/// Far more than any of our files holds in one list.
constexpr std::size_t kMostTables = 10000;

std::string list_of(const std::vector<std::string_view>& words) {
    std::string list;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0)
            list += i + 1 == words.size() ? " or " : ", ";
        list += fmt::format("\"{}\"", words[i]);
    }
    return list;
}

std::string did_you_mean(const std::string& nearest) {
    return nearest.empty() ? std::string() : fmt::format("Did you mean \"{}\"?", nearest);
}

/// "a length such as \"45 cm\""
std::string phrase_of(Dimension dimension) {
    switch (dimension) {
    case Dimension::number:
        return "a number";
    case Dimension::length:
        return "a length such as \"45 cm\"";
    case Dimension::angle:
        return "an angle such as \"30°\"";
    case Dimension::mass:
        return "a mass such as \"12 kg\"";
    case Dimension::force:
        return "a force such as \"120 N\"";
    case Dimension::torque:
        return "a torque such as \"20 N·m\"";
    case Dimension::time:
        return "a time such as \"2 s\"";
    case Dimension::stiffness:
        return "a stiffness such as \"150 N/m\"";
    case Dimension::acceleration:
        return "an acceleration such as \"9.80665 m/s²\"";
    default:
        return fmt::format("a quantity of the kind {}, with its unit", name_of(dimension));
    }
}

/// Calls a function with the first letter that no text of a file may hold, if there is one.
template <typename Tell> void for_bad_letter(std::string_view text, const Tell& tell) {
    for (std::size_t at = 0; at < text.size();) {
        const Letter letter = letter_at(text, at);
        if (!is_of_text(letter.value))
            return tell(letter);
        at += letter.bytes;
    }
}

/// What is found where a required key is missing.
constexpr const char* kNothing = "nothing";

} // namespace

InputError first_of(const InputErrors& errors) {
    // A missing key is most often there under a slip of spelling: what is there is told first.
    const auto rank = [](const InputError& error) {
        return std::pair(error.found == kNothing, error.line);
    };
    return *std::min_element(
        errors.begin(), errors.end(),
        [&](const InputError& one, const InputError& other) { return rank(one) < rank(other); });
}

std::string describe(const TomlNode& node) {
    struct Describe {
        std::string operator()(bool value) const { return value ? "true" : "false"; }
        std::string operator()(std::int64_t value) const {
            return fmt::format("the number {}", value);
        }
        std::string operator()(double value) const { return fmt::format("the number {}", value); }
        std::string operator()(const std::string& text) const {
            if (text.size() <= kLongestShown)
                return fmt::format("\"{}\"", text);
            std::size_t end = kLongestShown; // not in the middle of a UTF-8 letter
            while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80)
                --end;
            return fmt::format("\"{}…\"", text.substr(0, end));
        }
        std::string operator()(TomlDate) const { return "a date or time"; }
        std::string operator()(const TomlArray&) const { return "a list"; }
        std::string operator()(const TomlTable&) const { return "a table"; }
    };
    return std::visit(Describe{}, node.value);
}

ReadingRules rules_of_files(Dimension dimension, bool mass_as_force) {
    return {dimension == Dimension::angle ? "°" : "", mass_as_force};
}

std::string toml_string(std::string_view text) {
    std::string quoted = "\"";
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\')
            quoted += std::string("\\") + c;
        else if (c == '\n')
            quoted += "\\n";
        else if (byte < 0x20 || byte == 0x7F)
            quoted += fmt::format("\\u{:04X}", static_cast<unsigned>(byte));
        else
            quoted += c;
    }
    return quoted + "\"";
}

std::string toml_name(std::string_view text) {
    return toml_string(short_text(text));
}

std::string toml_words(std::string_view text) {
    std::string words;
    for (std::size_t at = 0; at < text.size();) {
        const Letter letter = letter_at(text, at);
        if (letter.valid && is_of_text(letter.value))
            words += text.substr(at, letter.bytes);
        at += letter.bytes;
    }
    return toml_string(words);
}

TomlReader::TomlReader(const TomlDocument& document, InputErrors& errors)
    : TomlReader(document.root, "", document.file, errors) {}

TomlReader::TomlReader(const TomlNode& table, std::string path, const std::string& file,
                       InputErrors& errors)
    : table_(&table), path_(std::move(path)), file_(&file), errors_(&errors) {}

const TomlNode* TomlReader::find(std::string_view key) const {
    for (const TomlNode& entry : std::get<TomlTable>(table_->value).entries)
        if (entry.key == key)
            return &entry;
    return nullptr;
}

bool TomlReader::has(std::string_view key) const {
    return find(key) != nullptr;
}

bool TomlReader::has_in(std::string_view key, std::string_view inner) const {
    const TomlNode* found = find(key);
    if (!found || !std::holds_alternative<TomlTable>(found->value))
        return false;
    const auto& entries = std::get<TomlTable>(found->value).entries;
    return std::any_of(entries.begin(), entries.end(),
                       [&](const TomlNode& entry) { return entry.key == inner; });
}

const TomlNode* TomlReader::ask(std::string_view key, Need need) {
    if (std::find(asked_.begin(), asked_.end(), key) == asked_.end())
        asked_.emplace_back(key);
    const TomlNode* found = find(key);
    if (!found && need == Need::required)
        add_error(key, kNothing, fmt::format("the key {}", key));
    return found;
}

const TomlNode* TomlReader::node(std::string_view key, Need need) {
    return ask(key, need);
}

std::string TomlReader::path_of(std::string_view key) const {
    return path_.empty() ? std::string(key) : fmt::format("{}.{}", path_, key);
}

void TomlReader::add_error(std::string_view key, std::string found, std::string expected,
                           std::string mend) {
    const TomlNode* at = find(key);
    add_error_at(at ? *at : *table_, path_of(key), std::move(found), std::move(expected),
                 std::move(mend));
}

void TomlReader::add_error_at(const TomlNode& at, const std::string& key_path, std::string found,
                              std::string expected, std::string mend) {
    errors_->push_back({*file_, at.line, at.column, key_path, std::move(found), std::move(expected),
                        std::move(mend)});
}

std::optional<std::string> TomlReader::text(std::string_view key, Need need) {
    const TomlNode* found = ask(key, need);
    if (!found)
        return std::nullopt;
    if (const auto* text = std::get_if<std::string>(&found->value)) {
        for_bad_letter(*text, [&](const Letter& letter) {
            add_error(key, fmt::format("the control character U+{:04X}", letter.value),
                      "letters, spaces and line breaks", "Delete it and write it again.");
        });
        return *text;
    }
    add_error(key, describe(*found), "a text in quotation marks");
    return std::nullopt;
}

std::optional<std::string> TomlReader::short_text(std::string_view key, Need need) {
    const TomlNode* found = ask(key, need);
    if (!found)
        return std::nullopt;
    const auto* text = std::get_if<std::string>(&found->value);
    if (!text)
        return this->text(key, need);
    if (const auto fault = fault_of_short_text(*text))
        add_error(key, *fault,
                  fmt::format("a name of at most {} letters in one line", kMostLetters));
    return *text;
}

std::optional<bool> TomlReader::boolean(std::string_view key, Need need) {
    const TomlNode* found = ask(key, need);
    if (!found)
        return std::nullopt;
    if (const auto* truth = std::get_if<bool>(&found->value))
        return *truth;
    add_error(key, describe(*found), "true or false");
    return std::nullopt;
}

std::optional<std::int64_t> TomlReader::integer(std::string_view key, Need need, std::int64_t low,
                                                std::int64_t high) {
    const TomlNode* found = ask(key, need);
    if (!found)
        return std::nullopt;
    const auto* whole = std::get_if<std::int64_t>(&found->value);
    if (whole && *whole >= low && *whole <= high)
        return *whole;
    const bool any = low == std::numeric_limits<std::int64_t>::min() &&
                     high == std::numeric_limits<std::int64_t>::max();
    add_error(key, describe(*found),
              any ? "a whole number" : fmt::format("a whole number from {} to {}", low, high));
    return std::nullopt;
}

std::optional<double> TomlReader::number(std::string_view key, Need need) {
    const auto written = quantity(key, Dimension::number, need);
    return written ? std::optional(written->value_SI) : std::nullopt;
}

std::optional<std::size_t>
TomlReader::choice(std::string_view key, const std::vector<std::string_view>& words, Need need) {
    const TomlNode* found = ask(key, need);
    if (!found)
        return std::nullopt;
    const auto* text = std::get_if<std::string>(&found->value);
    const auto word = text ? std::find(words.begin(), words.end(), *text) : words.end();
    if (word != words.end())
        return static_cast<std::size_t>(word - words.begin());
    add_error(key, describe(*found), list_of(words),
              did_you_mean(text ? nearest_spelling(*text, words) : std::string()));
    return std::nullopt;
}

std::optional<WrittenQuantity> TomlReader::quantity(std::string_view key, Dimension dimension,
                                                    Need need, bool mass_as_force) {
    const TomlNode* found = ask(key, need);
    return found ? quantity_of(*found, path_of(key), dimension, mass_as_force) : std::nullopt;
}

std::optional<WrittenQuantity> TomlReader::quantity_of(const TomlNode& from,
                                                       const std::string& key_path,
                                                       Dimension dimension, bool mass_as_force) {
    const auto* written = std::get_if<std::string>(&from.value);
    std::string text;
    if (written)
        text = *written;
    else if (const auto* whole = std::get_if<std::int64_t>(&from.value))
        text = std::to_string(*whole);
    else if (const auto* number = std::get_if<double>(&from.value);
             number && std::isfinite(*number))
        text = exact_number(*number);
    if (text.empty()) {
        add_error_at(from, key_path, describe(from), phrase_of(dimension));
        return std::nullopt;
    }
    const auto value = parse_quantity(text, dimension, rules_of_files(dimension, mass_as_force));
    if (value)
        return WrittenQuantity{*value, text, written == nullptr, from.line, from.column};
    add_error_at(from, key_path, describe(from), phrase_of(dimension), to_text(value.error()));
    return std::nullopt;
}

std::optional<std::vector<std::string>> TomlReader::texts(std::string_view key, Need need) {
    const TomlNode* found = ask(key, need);
    if (!found)
        return std::nullopt;
    std::vector<std::string> result;
    const auto* array = std::get_if<TomlArray>(&found->value);
    bool all_texts = array != nullptr;
    for (const TomlNode& item : array ? array->items : std::vector<TomlNode>{}) {
        const auto* text = std::get_if<std::string>(&item.value);
        all_texts = all_texts && text;
        if (text)
            for_bad_letter(*text, [&](const Letter& letter) {
                add_error_at(item, path_of(key),
                             fmt::format("the control character U+{:04X}", letter.value),
                             "letters, spaces and line breaks");
            });
        result.push_back(text ? *text : std::string());
    }
    if (all_texts)
        return result;
    add_error(key, describe(*found), "a list of texts such as [\"one\", \"two\"]");
    return std::nullopt;
}

std::optional<TomlReader> TomlReader::table(std::string_view key, Need need) {
    const TomlNode* found = ask(key, need);
    if (!found)
        return std::nullopt;
    if (std::holds_alternative<TomlTable>(found->value))
        return TomlReader(*found, path_of(key), *file_, *errors_);
    add_error(key, describe(*found), fmt::format("a table [{}]", path_of(key)));
    return std::nullopt;
}

std::vector<TomlReader> TomlReader::tables(std::string_view key, Need need) {
    std::vector<TomlReader> result;
    const TomlNode* found = ask(key, need);
    if (!found)
        return result;
    const auto* array = std::get_if<TomlArray>(&found->value);
    const std::string expected = fmt::format("tables that begin with [[{}]]", path_of(key));
    if (!array) {
        add_error(key, describe(*found), expected,
                  std::holds_alternative<TomlTable>(found->value)
                      ? fmt::format("Write two brackets: [[{}]].", path_of(key))
                      : std::string());
        return result;
    }
    if (array->items.size() > kMostTables) {
        add_error(key, fmt::format("{} tables", array->items.size()),
                  fmt::format("at most {}", kMostTables));
        return result;
    }
    for (std::size_t i = 0; i < array->items.size(); ++i) {
        const TomlNode& item = array->items[i];
        const std::string path = fmt::format("{}[{}]", path_of(key), i + 1);
        if (std::holds_alternative<TomlTable>(item.value))
            result.push_back(TomlReader(item, path, *file_, *errors_));
        else
            add_error_at(item, path, describe(item), expected);
    }
    return result;
}

std::vector<std::pair<std::string, TomlReader>> TomlReader::named_tables() {
    std::vector<std::pair<std::string, TomlReader>> result;
    for (const std::string& key : free_keys())
        if (auto inner = table(key))
            result.emplace_back(key, *std::move(inner));
    return result;
}

std::vector<std::string> TomlReader::free_keys() {
    std::vector<std::string> keys;
    for (const TomlNode& entry : std::get<TomlTable>(table_->value).entries) {
        keys.push_back(entry.key);
        asked_.push_back(entry.key);
    }
    return keys;
}

void TomlReader::finish() {
    const std::vector<std::string_view> known(asked_.begin(), asked_.end());
    std::vector<std::string_view> unused;
    for (const std::string_view key : known)
        if (!has(key))
            unused.push_back(key);
    int reported = 0;
    for (const TomlNode& entry : std::get<TomlTable>(table_->value).entries) {
        if (std::find(known.begin(), known.end(), entry.key) != known.end())
            continue;
        add_error_at(entry, path_of(entry.key), "a key that means nothing here",
                     "one of " + list_of(known), did_you_mean(nearest_spelling(entry.key, unused)));
        if (++reported == kMostUnknownKeys)
            return;
    }
}

} // namespace steelyard::setup
