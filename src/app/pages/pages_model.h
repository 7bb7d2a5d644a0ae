#pragma once
// The pages of a skill as one learner reads them: a prediction locked before anything is shown,
// then the drawing to be moved. No window.

#include "lesson/lesson_move.h"
#include "lesson/lesson_quantity.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

/// How far a page has come.
struct PageProgress {
    std::optional<std::size_t> guessed; ///< which choice was locked
    double share = 0.0;                 ///< of the way of its move, 0 to 1
    bool moved = false;                 ///< by the learner
};

struct PagesModel {
    lesson::Lesson lesson;
    std::vector<mechanics::Muscle> muscles;
    setup::UnitSystem units = setup::UnitSystem::si;
    std::size_t page = 0;
    std::vector<PageProgress> progress; ///< one for each page

    const lesson::LessonStep& step() const { return lesson.steps[page]; }
    const PageProgress& now() const { return progress[page]; }
    bool at_end() const { return page + 1 == lesson.steps.size(); }
    /// What is predicted is predicted, or nothing was to be.
    bool is_open() const;
};

/// What a page says and shows now.
struct PageView {
    lesson::LessonStage stage;  ///< moved as it is now
    lesson::SolvedStage solved; ///< of that stage, which it points to
    std::string prompt;
    std::vector<std::string> choices;
    std::optional<std::size_t> right; ///< which of them; empty before the page is open
    std::string reveal;               ///< empty before the page is open
    struct Shown {
        std::string name;
        std::string value;
    };
    std::vector<Shown> shows; ///< what is read while it moves; empty before the page is open
    std::string moved_value;  ///< the value that is moved: "1.2 m"
    std::string moved_name;   ///< "place of the load"

    PageView() = default;
    PageView(const PageView&) = delete; // `solved` points into `stage`
    PageView& operator=(const PageView&) = delete;
};

/// The file of a skill's pages below a folder of assets; it need not be there.
std::filesystem::path pages_file(const std::filesystem::path& assets, const std::string& skill_id);

/// Opens pages from the first, or says what is wrong with the file.
tl::expected<PagesModel, setup::InputError> open_pages(const std::filesystem::path& file,
                                                       std::vector<mechanics::Muscle> muscles,
                                                       setup::UnitSystem units);

// --- intents -------------------------------------------------------------------------------------

/// Locks a prediction; the first one counts.
void guess(PagesModel& model, std::size_t choice);
/// Moves the drawing of an open page to a share of the way, 0 to 1.
void move_to(PagesModel& model, double share);
/// To the next page, if the present one is open.
/// @return false when there is none: the pages are read
bool turn_on(PagesModel& model);
void turn_back(PagesModel& model);

/// What the present page says and shows.
void view_page(const PagesModel& model, PageView& view);

} // namespace steelyard::app
