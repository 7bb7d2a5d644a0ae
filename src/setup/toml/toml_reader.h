#pragma once
// TOML files with errors that their authors can mend: the layer that every kind of file of ours is
// read through.
//
//     auto document = read_toml_file(path);              // or parse_toml(text, name)
//     if (!document) return unexpected(document.error());
//     InputErrors errors;
//     TomlReader table(*document, errors);
//     setup.name = table.text("name", Need::required).value_or("");
//     for (TomlReader& load : table.tables("load")) { ...; load.finish(); }
//     table.finish();                                    // keys that nobody asked for are errors
//     if (!errors.empty()) return unexpected(first_of(errors));

#include "setup/toml/input_error.h"
#include "setup/units/units.h"

#include <tl/expected.hpp>

#include <cstdint>
#include <filesystem>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace steelyard::setup {

struct TomlNode;

struct TomlArray {
    std::vector<TomlNode> items;
};

/// Entries in the order of the file.
struct TomlTable {
    std::vector<TomlNode> entries;
};

/// Dates and times: none of our files has any, so they are only named in errors.
struct TomlDate {};

/// One value of a file and where it stands.
struct TomlNode {
    std::string key; ///< empty in an array
    int line = 0;    ///< from 1
    int column = 0;  ///< from 1
    std::variant<bool, std::int64_t, double, std::string, TomlDate, TomlArray, TomlTable> value;
};

struct TomlDocument {
    std::string file; ///< as the caller named it, for errors
    TomlNode root;    ///< a table
};

/// Largest file that is read [bytes]; a larger one is refused unread.
inline constexpr std::uintmax_t kLargestFile = 8u << 20;

/// Parses a text. Refused with place and mend: what is not TOML, duplicate keys, NUL bytes, what
/// is not UTF-8, nesting deeper than anyone writes, an empty text.
/// @param file  the name that errors are to give
tl::expected<TomlDocument, InputError> parse_toml(std::string_view text, const std::string& file);

/// Reads and parses a file. Also refused: missing, unreadable, a folder, larger than kLargestFile.
tl::expected<TomlDocument, InputError> read_toml_file(const std::filesystem::path& path);

/// Everything wrong with a file, in the order of reading.
using InputErrors = std::vector<InputError>;

/// The error to tell: the first in the file about something that is there, else the first missing
/// key. There must be one.
InputError first_of(const InputErrors& errors);

/// Whether a key must be there.
enum class Need { optional, required };

/// A quantity in a file: its value and what was written, so that it can be written back the same.
struct WrittenQuantity {
    double value_SI = 0.0;
    std::string text;  ///< "45 cm"
    bool bare = false; ///< a number without quotation marks
    int line = 0;
    int column = 0;
};

/// One table of a document, read key by key. A getter gives nothing when the key is missing or
/// wrong; what is wrong is added to the errors with its place. Copies share the errors; the
/// document must outlive the reader.
class TomlReader {
public:
    TomlReader(const TomlDocument& document, InputErrors& errors);

    bool has(std::string_view key) const;
    /// True when the key is a table that has the inner key.
    bool has_in(std::string_view key, std::string_view inner) const;

    /// A text of any length and number of lines, without other controls or marks of direction.
    std::optional<std::string> text(std::string_view key, Need need = Need::optional);
    /// A name or a title: see letters.h.
    std::optional<std::string> short_text(std::string_view key, Need need = Need::optional);
    std::optional<bool> boolean(std::string_view key, Need need = Need::optional);
    std::optional<std::int64_t>
    integer(std::string_view key, Need need = Need::optional,
            std::int64_t low = std::numeric_limits<std::int64_t>::min(),
            std::int64_t high = std::numeric_limits<std::int64_t>::max());
    /// A pure number, written as a number or as a text ("1/2", "45 %").
    std::optional<double> number(std::string_view key, Need need = Need::optional);
    /// One of a fixed set of words; gives its index.
    std::optional<std::size_t> choice(std::string_view key,
                                      const std::vector<std::string_view>& words,
                                      Need need = Need::optional);
    /// A quantity with its unit, as text: "45 cm". Numbers without a unit are refused but for 0
    /// and angles, which are then in degrees: nobody can know what 45 of a length is.
    std::optional<WrittenQuantity> quantity(std::string_view key, Dimension dimension,
                                            Need need = Need::optional, bool mass_as_force = false);
    /// An array of texts.
    std::optional<std::vector<std::string>> texts(std::string_view key, Need need = Need::optional);

    /// A table `[key]`.
    std::optional<TomlReader> table(std::string_view key, Need need = Need::optional);
    /// An array of tables `[[key]]`; empty when missing or wrong.
    std::vector<TomlReader> tables(std::string_view key, Need need = Need::optional);
    /// Every entry of a table whose keys are free, such as names of joints; each must be a table.
    std::vector<std::pair<std::string, TomlReader>> named_tables();
    /// The keys of this table in the order of the file; they count as asked for.
    std::vector<std::string> free_keys();

    /// The value itself, for forms that no getter covers; null when missing.
    const TomlNode* node(std::string_view key, Need need = Need::optional);
    /// Reads a node of such a form as a quantity.
    /// @param key_path  how errors name it, below this table: "path[2]"
    std::optional<WrittenQuantity> quantity_of(const TomlNode& from, const std::string& key_path,
                                               Dimension dimension, bool mass_as_force = false);

    /// Adds an error about a key of this table; the place is the key's, or the table's when the
    /// key is missing.
    void add_error(std::string_view key, std::string found, std::string expected,
                   std::string mend = {});
    /// Adds an error about a node with the key path given.
    void add_error_at(const TomlNode& at, const std::string& key_path, std::string found,
                      std::string expected, std::string mend = {});

    /// Reports keys that no getter asked for, with the nearest one that was. Call it once, last.
    void finish();

    const std::string& file() const { return *file_; }
    int line() const { return table_->line; }
    /// Path of a key for people, counted from 1: "load[2].at".
    std::string path_of(std::string_view key) const;

private:
    TomlReader(const TomlNode& table, std::string path, const std::string& file,
               InputErrors& errors);
    const TomlNode* find(std::string_view key) const;
    const TomlNode* ask(std::string_view key, Need need);

    const TomlNode* table_;
    std::string path_; ///< of this table; empty for the document
    const std::string* file_;
    InputErrors* errors_;
    std::vector<std::string> asked_;
};

/// How quantities in files are read: angles may be bare, in degrees.
ReadingRules rules_of_files(Dimension dimension, bool mass_as_force);

/// What a value is, as a phrase for errors: "the number 45", "a table", "\"45 cmm\"".
std::string describe(const TomlNode& node);

/// A text as a TOML string with quotes: escapes what needs it.
std::string toml_string(std::string_view text);
/// The same of a name or a title, and of a longer text, made such that the reader takes them: what
/// is typed or pasted may hold anything.
std::string toml_name(std::string_view text);
std::string toml_words(std::string_view text);

} // namespace steelyard::setup
