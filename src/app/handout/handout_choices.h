#pragma once
// What a handout is to be: everything that can be chosen, and the rows of words to choose by. No
// window, no files.

#include "publish/sheets/blueprint.h"
#include "publish/sheets/handout_job.h"
#include "publish/sheets/sheet_choice.h"

#include <cstdint>
#include <string>
#include <vector>

namespace steelyard::app {

struct HandoutChoices {
    std::size_t blueprint = 0; ///< index into the list of them
    /// What is put together in place of a blueprint of the list; empty = the blueprint is made.
    std::optional<publish::SheetChoice> own;
    bool prints_codes = false; ///< each question's code stands below it
    std::uint64_t seed = 1;
    int versions = 1;
    publish::PaperSize paper = publish::PaperSize::a4;
    bool large_print = false;
    bool us_units = false;
    std::vector<publish::HandoutFormat> formats{publish::HandoutFormat::pdf};
    std::string folder; ///< where the files go, as typed

    bool operator==(const HandoutChoices&) const = default;
};

/// One word of a row.
struct HandoutWord {
    std::string word;
    bool in_force = false;
    HandoutChoices chosen; ///< the choices after it was pressed
};

/// What a row is about, where that makes a difference to whoever shows it.
enum class RowKind { sheet, seed, words, formats };

/// A row of words of which one is in force; of the formats any number may be.
struct HandoutRow {
    const char* name;
    std::vector<HandoutWord> words;
    RowKind kind = RowKind::words;
    bool beside_next = false; ///< short enough to share a line with the next row
};

/// The rows from top to bottom: sheet; of a sheet that is put together how many, how hard, about
/// what and from whose families; seed, versions, paper, type, units, codes, formats.
std::vector<HandoutRow> rows_of(const HandoutChoices& choices,
                                const std::vector<publish::Blueprint>& blueprints);

/// The choices after a step in a row: to the next word, of the seed to the next number. Steps
/// beyond the ends of a row, and in the row of formats, change nothing.
HandoutChoices stepped(const HandoutChoices& choices,
                       const std::vector<publish::Blueprint>& blueprints, std::size_t row,
                       int step);

/// With a blueprint of the list, and the paper and type that it asks for.
HandoutChoices with_blueprint(HandoutChoices choices,
                              const std::vector<publish::Blueprint>& blueprints,
                              std::size_t blueprint);

/// Begins to put a sheet together: from the blueprint that is chosen where it can be chosen, else
/// from nothing.
HandoutChoices with_own_sheet(HandoutChoices choices,
                              const std::vector<publish::Blueprint>& blueprints,
                              const problems::Bank& bank);

/// With a format more or less.
HandoutChoices toggled(HandoutChoices choices, publish::HandoutFormat format);

/// Reads what was typed where the seed is: a whole number, or the code at the foot of a page, which
/// says sheet, seed and version.
/// @return the choices, or a sentence saying what is wrong
tl::expected<HandoutChoices, std::string>
read_seed(const std::string& typed, const HandoutChoices& choices,
          const std::vector<publish::Blueprint>& blueprints);

/// How many files will be written.
std::size_t files_of(const HandoutChoices& choices);

/// The sheets of the choices.
/// @return all versions, or a sentence saying which part the bank cannot fill, or that `progress`
///         said stop
tl::expected<std::vector<publish::Worksheet>, std::string>
sheets_of(const HandoutChoices& choices, const std::vector<publish::Blueprint>& blueprints,
          const problems::Bank& bank, const publish::Progress& progress = {});

} // namespace steelyard::app
