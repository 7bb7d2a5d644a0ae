// The only place that knows toml++.
// Its parser asserts (or, in a release, assumes) what it has not yet checked of a malformed file,
// such as "[[["; without the assertion it goes on to a proper error.
#undef NDEBUG
#define TOML_ASSERT(expression) static_cast<void>(0)
#define TOML_EXCEPTIONS 0
#define TOML_ENABLE_FORMATTERS 0
#include "setup/toml_reader.h"

#include <fmt/format.h>
#include <toml++/toml.h>

#include <algorithm>
#include <fstream>
#include <system_error>

namespace steelyard::setup {
namespace {

/// Deeper than any of our files; bounds the recursion of the parser and of what it builds.
constexpr int kDeepestKey = 16;
constexpr int kDeepestBrackets = 32;

InputError whole_file_error(const std::string& file, std::string found, std::string expected,
                            std::string mend) {
    InputError error;
    error.file = file;
    error.found = std::move(found);
    error.expected = std::move(expected);
    error.mend = std::move(mend);
    return error;
}

/// Skips a string or a comment that begins at `at`; gives where it ends.
std::size_t end_of_quiet_part(std::string_view text, std::size_t at) {
    const char quote = text[at];
    if (quote == '#')
        return std::min(text.find('\n', at), text.size());
    const std::string triple(3, quote);
    const bool many_lines = text.substr(at, 3) == triple;
    const std::string_view closing =
        many_lines ? std::string_view(triple) : std::string_view(triple).substr(0, 1);
    std::size_t i = at + closing.size();
    while (i < text.size()) {
        if (text[i] == '\\' && quote == '"')
            i += 2;
        else if (text.substr(i, closing.size()) == closing)
            return i + closing.size();
        else if (text[i] == '\n' && !many_lines)
            return i; // an open string: the parser will say so
        else
            ++i;
    }
    return text.size();
}

/// The line on which keys or brackets nest deeper than allowed; 0 when none does.
int line_nested_too_deep(std::string_view text) {
    int line = 1;
    int dots = 0;
    int brackets = 0;
    for (std::size_t i = 0; i < text.size();) {
        const char c = text[i];
        if (c == '"' || c == '\'' || c == '#') {
            const std::size_t end = end_of_quiet_part(text, i);
            line +=
                static_cast<int>(std::count(text.begin() + static_cast<std::ptrdiff_t>(i),
                                            text.begin() + static_cast<std::ptrdiff_t>(end), '\n'));
            i = std::max(end, i + 1);
            continue;
        }
        dots = c == '.' ? dots + 1 : c == '\n' || c == ',' || c == '=' ? 0 : dots;
        brackets += c == '[' || c == '{' ? 1 : c == ']' || c == '}' ? -1 : 0;
        brackets = std::max(brackets, 0);
        if (dots > kDeepestKey || brackets > kDeepestBrackets)
            return line;
        line += c == '\n' ? 1 : 0;
        ++i;
    }
    return 0;
}

int line_of(std::string_view text, std::size_t at) {
    return 1 + static_cast<int>(
                   std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
}

/// Where the text stops being UTF-8 without surrogates; npos when nowhere.
std::size_t first_invalid_utf8(std::string_view text) {
    for (std::size_t i = 0; i < text.size();) {
        const auto byte = [&](std::size_t k) {
            return i + k < text.size() ? static_cast<unsigned char>(text[i + k]) : 0u;
        };
        const unsigned lead = byte(0);
        const std::size_t length = lead < 0x80    ? 1
                                   : lead < 0xC2  ? 0
                                   : lead < 0xE0  ? 2
                                   : lead < 0xF0  ? 3
                                   : lead <= 0xF4 ? 4
                                                  : 0;
        bool valid = length > 0;
        for (std::size_t k = 1; k < length; ++k)
            valid = valid && byte(k) >= 0x80 && byte(k) < 0xC0;
        valid = valid && !(lead == 0xE0 && byte(1) < 0xA0) && !(lead == 0xED && byte(1) > 0x9F) &&
                !(lead == 0xF0 && byte(1) < 0x90) && !(lead == 0xF4 && byte(1) > 0x8F);
        if (!valid)
            return i;
        i += length;
    }
    return std::string_view::npos;
}

std::optional<InputError> unreadable_text(std::string_view text, const std::string& file) {
    InputError error;
    error.file = file;
    if (const std::size_t nul = text.find('\0'); nul != std::string_view::npos) {
        error.line = line_of(text, nul);
        error.found = "binary data";
        error.expected = "a text file in TOML";
        error.mend = "Choose another file; this one is not a text.";
        return error;
    }
    if (const std::size_t bad = first_invalid_utf8(text); bad != std::string_view::npos) {
        error.line = line_of(text, bad);
        error.found = fmt::format("the byte 0x{:02X}, which is not UTF-8",
                                  static_cast<unsigned>(static_cast<unsigned char>(text[bad])));
        error.expected = "a text file in UTF-8";
        error.mend = "Save the file again with the encoding UTF-8.";
        return error;
    }
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos)
        return whole_file_error(file, "an empty file", "keys and values in TOML",
                                "Start from one of the files that come with the program.");
    if (const int line = line_nested_too_deep(text); line > 0) {
        error.line = line;
        error.found = "brackets or keys nested too deep";
        error.expected = fmt::format("at most {} names in a key and {} open brackets", kDeepestKey,
                                     kDeepestBrackets);
        error.mend = "Check for a bracket that is never closed.";
        return error;
    }
    return std::nullopt;
}

TomlNode converted(const toml::node& from);

TomlArray converted_array(const toml::array& from) {
    TomlArray array;
    array.items.reserve(from.size());
    for (const toml::node& item : from)
        array.items.push_back(converted(item));
    return array;
}

TomlTable converted_table(const toml::table& from) {
    TomlTable table;
    table.entries.reserve(from.size());
    for (const auto& [key, value] : from) {
        TomlNode node = converted(value);
        node.key = std::string(key.str());
        // The key's place, not the value's: it is what the author looks for.
        if (key.source().begin.line > 0) {
            node.line = static_cast<int>(key.source().begin.line);
            node.column = static_cast<int>(key.source().begin.column);
        }
        table.entries.push_back(std::move(node));
    }
    std::stable_sort(
        table.entries.begin(), table.entries.end(), [](const TomlNode& one, const TomlNode& other) {
            return std::pair(one.line, one.column) < std::pair(other.line, other.column);
        });
    return table;
}

TomlNode converted(const toml::node& from) {
    TomlNode node;
    node.line = static_cast<int>(from.source().begin.line);
    node.column = static_cast<int>(from.source().begin.column);
    if (const auto* text = from.as_string())
        node.value = text->get();
    else if (const auto* whole = from.as_integer())
        node.value = whole->get();
    else if (const auto* number = from.as_floating_point())
        node.value = number->get();
    else if (const auto* truth = from.as_boolean())
        node.value = truth->get();
    else if (const auto* array = from.as_array())
        node.value = converted_array(*array);
    else if (const auto* table = from.as_table())
        node.value = converted_table(*table);
    else
        node.value = TomlDate{};
    return node;
}

} // namespace

tl::expected<TomlDocument, InputError> parse_toml(std::string_view text, const std::string& file) {
    constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
    if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark)
        text.remove_prefix(kByteOrderMark.size());
    if (auto error = unreadable_text(text, file))
        return tl::make_unexpected(*std::move(error));

    const toml::parse_result result = toml::parse(text);
    if (!result) {
        InputError error;
        error.file = file;
        error.line = static_cast<int>(result.error().source().begin.line);
        error.column = static_cast<int>(result.error().source().begin.column);
        error.found = "something that is not TOML";
        error.expected = "lines such as: name = \"Beam balance\"";
        error.mend = fmt::format("The parser says: {}.", result.error().description());
        return tl::make_unexpected(std::move(error));
    }
    TomlDocument document;
    document.file = file;
    document.root.line = 1;
    document.root.column = 1;
    document.root.value = converted_table(result.table());
    return document;
}

tl::expected<TomlDocument, InputError> read_toml_file(const std::filesystem::path& path) {
    const std::string name = path.string();
    const auto refuse = [&](std::string found, std::string expected, std::string mend) {
        return tl::make_unexpected(
            whole_file_error(name, std::move(found), std::move(expected), std::move(mend)));
    };
    std::error_code trouble;
    const std::filesystem::file_status status = std::filesystem::status(path, trouble);
    if (!std::filesystem::exists(status))
        return refuse("no such file", "a text file in TOML", "Check the name and the folder.");
    if (std::filesystem::is_directory(status))
        return refuse("a folder", "a text file in TOML", "Name a file in it.");
    if (!std::filesystem::is_regular_file(status))
        return refuse("something that is not a plain file", "a text file in TOML",
                      "Copy its content to a plain file.");
    const std::uintmax_t size = std::filesystem::file_size(path, trouble);
    if (trouble)
        return refuse("a file that cannot be read", "a text file in TOML",
                      fmt::format("The system says: {}.", trouble.message()));
    if (size > kLargestFile)
        return refuse(fmt::format("a file of {} MB", size >> 20),
                      fmt::format("a text file of at most {} MB", kLargestFile >> 20),
                      "Choose another file; this one was not read.");
    std::ifstream stream(path, std::ios::binary);
    std::string text(static_cast<std::size_t>(size), '\0');
    stream.read(text.data(), static_cast<std::streamsize>(size));
    if (!stream)
        return refuse("a file that cannot be read", "a text file in TOML",
                      "Check that you may read it.");
    return parse_toml(text, name);
}

} // namespace steelyard::setup
