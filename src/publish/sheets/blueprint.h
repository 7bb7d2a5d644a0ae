#pragma once
// A blueprint says what a worksheet is made of; a seed makes it into a paper, in as many versions
// as the room has neighbours. The format is taught in assets/blueprints/README.md.

#include "problems/bank/bank.h"
#include "publish/files/error.h"
#include "publish/files/progress.h"
#include "publish/sheets/worksheet.h"
#include "setup/toml/toml_reader.h"

#include <tl/expected.hpp>

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::publish {

/// Questions under one heading: how many, and of what.
struct BlueprintPart {
    std::string heading;
    std::int64_t count = 4;
    std::optional<std::string> skill;       ///< id; empty = any
    std::optional<std::string> family;      ///< id; empty = any
    std::optional<int> difficulty;          ///< 1 to 5; empty = any
    std::optional<setup::UnitSystem> units; ///< empty = those of the whole sheet
    std::optional<problems::Scene> about;   ///< what they show; empty = anything
    int line = 0;                           ///< of the part in its file
};

struct Blueprint {
    std::string name;  ///< of its file, without the ending: "boathouse"
    std::string file;  ///< as the caller named it, for errors
    std::string title; ///< of the sheet
    std::string note;  ///< below the title
    PaperSize paper = PaperSize::a4;
    bool large_print = false;
    bool in_us_units = false;  ///< every part that says nothing else
    bool with_own = false;     ///< with the person's own families beside ours
    bool prints_codes = false; ///< each question's code stands below it
    std::vector<BlueprintPart> parts;
};

/// Ending of the names of blueprint files.
inline constexpr std::string_view kBlueprintEnding = ".blueprint.toml";

/// Most questions of one sheet, and most versions of it: one for each letter.
inline constexpr std::int64_t kMostQuestions = 1000;
inline constexpr int kMostVersions = 26;

/// Reads a blueprint from a text or a file. Skills and families are judged when sheets are made.
tl::expected<Blueprint, setup::InputError> parse_blueprint(std::string_view text,
                                                           const std::string& file);
tl::expected<Blueprint, setup::InputError> read_blueprint(const std::filesystem::path& path);

/// The blueprint as the text of its file: read again it says the same. Without units, which are
/// chosen where sheets are made.
std::string write_blueprint(const Blueprint& blueprint);

/// A file of a folder: a blueprint, or what is wrong with it.
using BlueprintListing = tl::expected<Blueprint, setup::InputError>;

/// All blueprints of a folder, by their names; a single error where it cannot be read.
std::vector<BlueprintListing> list_blueprints(const std::filesystem::path& folder);

/// The versions A, B, C ... of the paper that a seed makes. Question by question they share family
/// and difficulty and differ in their numbers. A single version has no letter.
/// @param bank      must outlive the sheets, whose questions are made when they are looked at
/// @param versions  from 1 to kMostVersions
/// @return the sheets, or what the bank lacks, for a part of a bank would give another paper; or
///         which part of the blueprint it cannot fill, or that `progress`, told of every question,
///         said stop
tl::expected<std::vector<Worksheet>, PublishError> make_worksheets(const problems::Bank& bank,
                                                                   const Blueprint& blueprint,
                                                                   std::uint64_t seed, int versions,
                                                                   const Progress& progress = {});

/// What a sheet's code stands for: "boathouse-42-B" is version B of seed 42, "boathouse-42us-B" the
/// same in US units.
struct SheetCode {
    std::string blueprint;
    std::uint64_t seed = 0;
    int version = 0; ///< from 0; -1 when the code has no letter
    bool us_units = false;
};

std::string write_sheet_code(const SheetCode& code);

/// Empty when the text is no sheet code.
std::optional<SheetCode> read_sheet_code(std::string_view text);

} // namespace steelyard::publish
