#include "publish/sheets/handout_job.h"

#include "publish/exchange/csv.h"
#include "publish/exchange/qti_package.h"
#include "publish/files/held_file.h"
#include "publish/files/whole_file.h"
#include "publish/question/question_figure.h"
#include "publish/sheets/blueprint.h"
#include "publish/sheets/worksheet_html.h"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <functional>
#include <sstream>
#include <system_error>
#include <utility>

namespace steelyard::publish {
namespace fs = std::filesystem;
namespace {

using Bytes = tl::expected<std::string, PublishError>;
using Written = tl::expected<void, PublishError>;

} // namespace

// Not without a name: they are members of HandoutWork::State.
namespace handout_job {

/// A file to make.
struct Output {
    std::string name;
    std::function<Written(const fs::path&, const Progress&)> write;
    std::size_t weight = 1; ///< how long it takes beside the others: questions in it
};

} // namespace handout_job

namespace {

using handout_job::Output;

std::vector<problems::Question> questions_of(const Worksheet& sheet) {
    std::vector<problems::Question> all;
    for (const SheetPart& part : sheet.parts)
        for (problems::Question question : part.questions)
            all.push_back(std::move(question));
    return all;
}

/// What follows a sheet's code in the names of its files.
std::string ending_of(HandoutFormat format) {
    switch (format) {
    case HandoutFormat::pdf:
        return ".pdf";
    case HandoutFormat::html:
        return ".html";
    case HandoutFormat::qti21:
        return "-qti21.zip";
    case HandoutFormat::qti3:
        return "-qti3.zip";
    case HandoutFormat::csv:
        return "-csv.zip";
    case HandoutFormat::cards:
        return "-cards.zip";
    }
    return "";
}

/// A sheet and its key.
using SideWrite = std::function<Written(SheetSide, const fs::path&, const Progress&)>;
void add_sides(const Worksheet& sheet, const std::string& ending, const SideWrite& write,
               std::vector<Output>& outputs) {
    for (const SheetSide side : {SheetSide::questions, SheetSide::key}) {
        outputs.push_back({sheet.code + (side == SheetSide::key ? "-key" : "") + ending,
                           [side, write](const fs::path& path, const Progress& progress) {
                               return write(side, path, progress);
                           },
                           1 + sheet.count()});
    }
}

/// Makes bytes and writes them.
template <typename Make> Written write_made(const fs::path& path, const Make& make) {
    return make().and_then([&](const std::string& bytes) { return write_whole_file(path, bytes); });
}

/// Bank, sheet and tools are to outlive the outputs.
void add_outputs(const problems::Bank& bank, const Worksheet& sheet, HandoutFormat format,
                 const Tools& tools, std::vector<Output>& outputs) {
    const std::string ending = ending_of(format);
    if (format == HandoutFormat::pdf) {
        add_sides(
            sheet, ending,
            [&](SheetSide side, const fs::path& path, const Progress& progress) {
                return tools.paper_pdf(path, sheet, bank, side, progress);
            },
            outputs);
    } else if (format == HandoutFormat::html) {
        add_sides(
            sheet, ending,
            [&](SheetSide side, const fs::path& path, const Progress& progress) {
                return write_made(path, [&] {
                    return side == SheetSide::key ? key_html(sheet, bank, progress)
                                                  : worksheet_html(sheet, progress);
                });
            },
            outputs);
    } else {
        outputs.push_back({sheet.code + ending,
                           [&, format](const fs::path& path, const Progress& progress) {
                               return write_made(path, [&] {
                                   return exported_questions(format, bank, questions_of(sheet),
                                                             sheet.title, Drawings::beside, tools,
                                                             progress)
                                       .map([](Exported made) { return std::move(made.bytes); });
                               });
                           },
                           1 + sheet.count()});
    }
}

/// A table of questions, csv or cards.
tl::expected<Exported, PublishError> exported_table(HandoutFormat format,
                                                    const problems::Bank& bank,
                                                    std::vector<problems::Question> questions,
                                                    Drawings drawings, const Tools& tools,
                                                    const Progress& progress) {
    const std::size_t all = questions.size();
    if (drawings == Drawings::left_out)
        questions.erase(std::remove_if(questions.begin(), questions.end(), needs_figure),
                        questions.end());
    const bool cards = format == HandoutFormat::cards;
    const bool beside = drawings == Drawings::beside;
    const PictureColumn column = beside ? PictureColumn::names : PictureColumn::empty;
    const Progress first = stretch_of(progress, 0, 1, 2);
    Bytes bytes = cards ? flash_cards_csv(questions, column, first)
                        : questions_csv(bank, questions, column, first);
    if (bytes && beside)
        bytes = with_pictures(cards ? "cards.csv" : "questions.csv", std::move(*bytes), questions,
                              stretch_of(progress, 1, 2, 2))
                    .and_then(tools.zip);
    return bytes.map([&](std::string& made) {
        return Exported{std::move(made), all - questions.size()};
    });
}

PublishError cannot(const fs::path& path, const char* doing, const std::error_code& why) {
    return {PublishFault::cannot_write,
            fmt::format("{}: cannot {}: {}. Name a folder that may be written to and has room.",
                        path.string(), doing, why.message())};
}

} // namespace

namespace handout_job {

/// A folder within the wanted one in which files wait for each other; gone with what is in it when
/// the work ends.
class WaitingFolder {
public:
    static tl::expected<WaitingFolder, PublishError> in(const fs::path& folder) {
        std::error_code failed;
        const bool made = fs::create_directories(folder, failed);
        if (failed)
            return tl::make_unexpected(cannot(folder, "make this folder", failed));
        constexpr int kNamesTried = 100;
        for (int i = 0; i < kNamesTried; ++i) {
            const fs::path within = folder / fmt::format(".handout{}.part", i);
            clear_left_behind(folder, within);
            if (fs::create_directory(within, failed))
                return WaitingFolder(folder, within, made);
            if (failed)
                break;
        }
        if (made) {
            std::error_code ignored;
            fs::remove(folder, ignored);
        }
        return tl::make_unexpected(cannot(folder, "write here", failed));
    }

    WaitingFolder(WaitingFolder&& other) noexcept
        : folder_(std::move(other.folder_)), within_(std::exchange(other.within_, fs::path())),
          made_folder_(other.made_folder_), held_(std::move(other.held_)) {}
    WaitingFolder& operator=(WaitingFolder&& other) = delete;
    WaitingFolder(const WaitingFolder&) = delete;
    WaitingFolder& operator=(const WaitingFolder&) = delete;
    ~WaitingFolder() {
        if (within_.empty())
            return;
        std::error_code ignored;
        fs::remove_all(within_, ignored);
        if (made_folder_)
            fs::remove(folder_, ignored); // refuses where there is something in it
    }

    fs::path waiting(const std::string& name) const { return within_ / name; }

    /// Packs the files as one of this name.
    HandoutFiles pack(const std::vector<Output>& outputs, const std::string& name,
                      const Tools& tools) const {
        std::vector<PackedFile> files;
        for (const Output& output : outputs) {
            std::ifstream file(waiting(output.name), std::ios::binary);
            std::ostringstream bytes;
            if (!(bytes << file.rdbuf()))
                return tl::make_unexpected(cannot(waiting(output.name), "read this again",
                                                  std::make_error_code(std::errc::io_error)));
            files.push_back({output.name, std::move(bytes).str()});
        }
        const fs::path package = folder_ / name;
        return tools.zip(files)
            .and_then([&](const std::string& bytes) { return write_whole_file(package, bytes); })
            .map([&] { return std::vector<fs::path>{package}; });
    }

    /// Moves files to their names. Those that have the names already wait aside until all new ones
    /// stand; where one cannot be moved, they come back.
    HandoutFiles move_out(const std::vector<Output>& outputs) const {
        std::vector<fs::path> moved;
        for (const Output& output : outputs) {
            const fs::path target = folder_ / output.name;
            std::error_code failed;
            if (fs::is_regular_file(fs::symlink_status(target, failed)))
                fs::rename(target, aside_in(within_, output.name), failed);
            else
                failed.clear();
            if (!failed)
                fs::rename(waiting(output.name), target, failed);
            if (failed) {
                std::error_code ignored;
                for (const fs::path& path : moved)
                    fs::remove(path, ignored);
                bring_back(folder_, within_);
                return tl::make_unexpected(cannot(target, "give it its name", failed));
            }
            moved.push_back(target);
        }
        return moved;
    }

private:
    WaitingFolder(fs::path folder, fs::path within, bool made_folder)
        : folder_(std::move(folder)), within_(std::move(within)), made_folder_(made_folder),
          held_(make_held_file(within_ / kHeld)) {}

    static constexpr const char* kHeld = "held";
    static constexpr const char* kAside = "before-";

    static fs::path aside_in(const fs::path& within, const std::string& name) {
        return within / (kAside + name);
    }

    /// Gives files that wait aside their names again, where no new one has taken them.
    static void bring_back(const fs::path& folder, const fs::path& within) {
        const std::string aside = kAside;
        std::error_code failed;
        std::vector<fs::path> waiting;
        for (fs::directory_iterator entry(within, failed), end; !failed && entry != end;
             entry.increment(failed))
            if (entry->path().filename().string().substr(0, aside.size()) == aside)
                waiting.push_back(entry->path());
        for (const fs::path& path : waiting)
            if (const fs::path name = path.filename().string().substr(aside.size());
                !fs::exists(folder / name, failed))
                fs::rename(path, folder / name, failed);
    }

    /// What a program that was killed has left.
    static void clear_left_behind(const fs::path& folder, const fs::path& within) {
        if (!is_left_behind(within / kHeld))
            return;
        bring_back(folder, within);
        std::error_code ignored;
        fs::remove_all(within, ignored);
    }

    fs::path folder_;
    fs::path within_; ///< empty after a move
    bool made_folder_;
    OpenFile held_;
};

} // namespace handout_job

using handout_job::WaitingFolder;

tl::expected<Exported, PublishError>
exported_questions(HandoutFormat format, const problems::Bank& bank,
                   std::vector<problems::Question> questions, const std::string& title,
                   Drawings drawings, const Tools& tools, const Progress& progress) {
    if (format == HandoutFormat::csv || format == HandoutFormat::cards)
        return exported_table(format, bank, std::move(questions), drawings, tools, progress);
    const QtiVersion version = format == HandoutFormat::qti21 ? QtiVersion::v2_1 : QtiVersion::v3_0;
    return qti_files(bank, questions, version, title, progress)
        .and_then(tools.zip)
        .map([](std::string bytes) {
            return Exported{std::move(bytes), 0};
        });
}

/// Held where it does not move: the outputs refer to the sheets.
struct HandoutWork::State {
    const problems::Bank& bank;
    std::vector<Worksheet> sheets;
    fs::path folder;
    const Tools& tools;
    HandoutShape shape;
    std::vector<Output> outputs{};
    std::optional<WaitingFolder> waiting{};
    std::size_t next = 0; ///< of the outputs
    std::size_t done = 0; ///< weight of those before it
    std::size_t all = 0;  ///< weight of all

    /// "boathouse-42.zip": what the sheets' codes have in common.
    std::string package_name() const {
        auto code = read_sheet_code(sheets.front().code);
        if (!code)
            return sheets.front().code + ".zip";
        code->version = -1;
        return write_sheet_code(*code) + ".zip";
    }

    HandoutFiles finish() const {
        return shape == HandoutShape::package && outputs.size() > 1
                   ? waiting->pack(outputs, package_name(), tools)
                   : waiting->move_out(outputs);
    }

    Written make_next(const Progress& progress) {
        const Output& output = outputs[next++];
        const Progress part = [&](std::size_t part_done, std::size_t of) {
            return goes_on(progress,
                           done + output.weight * part_done / std::max<std::size_t>(of, 1), all);
        };
        const Written written = output.write(waiting->waiting(output.name), part);
        done += output.weight;
        if (written && !goes_on(progress, done, all))
            return stopped_work();
        return written;
    }
};

HandoutWork::HandoutWork(const problems::Bank& bank, std::vector<Worksheet> sheets,
                         const std::vector<HandoutFormat>& formats, fs::path folder,
                         const Tools& tools, HandoutShape shape)
    : state_(std::make_unique<State>(
          State{bank, std::move(sheets), std::move(folder), tools, shape})) {
    for (const Worksheet& sheet : state_->sheets)
        for (const HandoutFormat format : formats)
            add_outputs(bank, sheet, format, tools, state_->outputs);
    for (const Output& output : state_->outputs)
        state_->all += output.weight;
}

HandoutWork::HandoutWork(HandoutWork&&) noexcept = default;
HandoutWork& HandoutWork::operator=(HandoutWork&&) noexcept = default;
HandoutWork::~HandoutWork() = default;

std::optional<HandoutFiles> HandoutWork::step(const Progress& progress) {
    if (!state_->waiting) {
        auto waiting = WaitingFolder::in(state_->folder);
        if (!waiting)
            return HandoutFiles(tl::unexpect, std::move(waiting.error()));
        state_->waiting.emplace(std::move(*waiting));
    }
    if (state_->next < state_->outputs.size()) {
        if (auto written = state_->make_next(progress); !written)
            return HandoutFiles(tl::unexpect, std::move(written.error()));
        return std::nullopt;
    }
    return state_->finish();
}

HandoutFiles write_handout(const problems::Bank& bank, const std::vector<Worksheet>& sheets,
                           const std::vector<HandoutFormat>& formats, const fs::path& folder,
                           const Tools& tools, const Progress& progress) {
    HandoutWork work(bank, sheets, formats, folder, tools);
    std::optional<HandoutFiles> files;
    while (!files)
        files = work.step(progress);
    return *std::move(files);
}

} // namespace steelyard::publish
