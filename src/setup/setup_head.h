#pragma once
// What every kind of setup has: how it introduces itself, and what was written in its file.

#include "mechanics/error.h"
#include "setup/toml/toml_reader.h"
#include "setup/units/units.h"

#include <functional>
#include <map>
#include <string>
#include <string_view>

namespace steelyard::setup {

/// How a setup introduces itself.
struct SetupHead {
    std::string name;                  ///< "Launch trolley"
    std::string description;           ///< one sentence: what it is and what it shows
    std::string place;                 ///< where in the scenario: "Slipway"; may be empty
    std::string note;                  ///< which free body is meant, what is left out; may be empty
    int order = kLast;                 ///< plain ones first
    UnitSystem units = UnitSystem::si; ///< in which its author thinks

    static constexpr int kLast = 100000;
};

/// A value as its author wrote it.
struct SourceNote {
    std::string text;  ///< "45 cm"
    bool bare = false; ///< a number without quotation marks
    int line = 0;
    int column = 0;
    std::string key = {}; ///< as the file spells it: "load[1].mass"
};

/// Where the values of a setup came from, by the keys of mechanics ("load[0].mass", counted from
/// 0). It makes errors point into the file and lets a value that has not changed be written back
/// in its author's unit. A setup made in the window has none, and needs none.
struct SourceNotes {
    std::string file;
    std::map<std::string, SourceNote, std::less<>> by_key;

    const SourceNote* find(std::string_view key) const;
};

/// Reads the keys of the head from the top of a document, and `kind`, which the caller has judged.
SetupHead read_head(TomlReader& top);

/// The head as the first lines of a file.
std::string write_head(const SetupHead& head, std::string_view kind);

/// An error of mechanics with the place of its key in the file, counted from 1 for people.
InputError placed_error(const mechanics::MechanicsError& error, const SourceNotes& source);

/// Reads a quantity and takes a note of it.
std::optional<double> noted_quantity(TomlReader& table, std::string_view key, Dimension dimension,
                                     const std::string& mechanics_key, SourceNotes& source,
                                     Need need = Need::optional, bool mass_as_force = false);

/// Whether two values are one to the last bit, as what is read again must be; -0 is not 0.
bool same_bits(double one, double other);

/// A quantity as the right side of a line of TOML: the author's own text while it still means this
/// very value, else the value in the author's unit, else in the fallback unit.
std::string written_quantity(double value_SI, Dimension dimension, std::string_view mechanics_key,
                             const SourceNotes& source, std::string_view fallback_unit,
                             bool mass_as_force = false);

} // namespace steelyard::setup
