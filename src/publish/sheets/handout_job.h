#pragma once
// Worksheets with their keys, and the same questions for other programs, written to a folder: all
// of them or none.

#include "problems/bank/bank.h"
#include "publish/files/error.h"
#include "publish/files/progress.h"
#include "publish/sheets/worksheet.h"
#include "publish/tools.h"

#include <tl/expected.hpp>

#include <cstddef>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::publish {

/// What can be made of a sheet. The first two give a sheet and a key, the others one file.
enum class HandoutFormat {
    pdf,
    html,  ///< pages that a browser prints
    qti21, ///< a package for a course site
    qti3,
    csv,   ///< questions and keys, a table with the drawings
    cards, ///< flash cards, likewise
};

/// Where the drawings are of questions that go out as a table, csv or cards.
enum class Drawings {
    beside,   ///< in one zip archive with the table
    left_out, ///< nowhere, and no question that needs one goes out: see needs_figure
};

/// What goes out.
struct Exported {
    std::string bytes;
    std::size_t left_out = 0; ///< questions that would have needed their drawing
};

/// Questions in one of the formats for other programs.
/// @param format    not pdf nor html
/// @param title     of the test in a package
/// @param drawings  of a table; a package for a course site always has them
tl::expected<Exported, PublishError>
exported_questions(HandoutFormat format, const problems::Bank& bank,
                   std::vector<problems::Question> questions, const std::string& title,
                   Drawings drawings, const Tools& tools, const Progress& progress = {});

/// Where the files are that were made, or why there are none.
using HandoutFiles = tl::expected<std::vector<std::filesystem::path>, PublishError>;

/// How several files come out.
enum class HandoutShape {
    files,   ///< each by itself
    package, ///< all in one, named by the first sheet's blueprint and seed: "boathouse-42.zip"
};

/// A handout that is written file by file, for whoever has other things to do between them: every
/// sheet in every format, named by its code: "boathouse-42-B.pdf", "boathouse-42-B-key.pdf",
/// "boathouse-42-B-qti21.zip", "boathouse-42-B-csv.zip". The folder is made when it is missing. The
/// files are made in a folder within and moved to their names, or packed, when all are there, so
/// that a failure or a stop leaves none of them; so does an end before the last step.
class HandoutWork {
public:
    /// @param bank, tools  have to outlive the work
    HandoutWork(const problems::Bank& bank, std::vector<Worksheet> sheets,
                const std::vector<HandoutFormat>& formats, std::filesystem::path folder,
                const Tools& tools, HandoutShape shape = HandoutShape::files);
    HandoutWork(HandoutWork&&) noexcept;
    HandoutWork& operator=(HandoutWork&&) noexcept;
    ~HandoutWork();

    /// Makes one file more.
    /// @return empty as long as there is more to do; after that it is not to be called again
    std::optional<HandoutFiles> step(const Progress& progress = {});

private:
    struct State;
    std::unique_ptr<State> state_; ///< on the heap: what makes the files holds its address
};

/// All steps of such a work.
HandoutFiles write_handout(const problems::Bank& bank, const std::vector<Worksheet>& sheets,
                           const std::vector<HandoutFormat>& formats,
                           const std::filesystem::path& folder, const Tools& tools,
                           const Progress& progress = {});

} // namespace steelyard::publish
