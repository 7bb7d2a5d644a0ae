#include "app/workshop/lesson_shelf.h"

#include "app/own/own_files.h"
#include "publish/files/whole_file.h"

#include <algorithm>
#include <system_error>

namespace steelyard::app {

namespace fs = std::filesystem;

namespace {

void add_folder(const fs::path& folder, LessonOrigin origin, LessonShelf& shelf) {
    std::error_code failed;
    if (folder.empty() || (origin == LessonOrigin::own && !fs::is_directory(folder, failed)))
        return; // nobody has made a lesson yet
    auto listings = lesson::list_lessons(folder);
    if (!listings) {
        shelf.faults.push_back(setup::to_text(listings.error()));
        return;
    }
    for (lesson::LessonListing& listing : *listings)
        if (listing.lesson)
            shelf.lessons.push_back({*std::move(listing.lesson), listing.path, origin});
        else
            shelf.faults.push_back(setup::to_text(listing.lesson.error()));
}

} // namespace

fs::path own_lesson_folder() {
    return own_folder_of("lessons");
}

LessonShelf read_lesson_shelf(const fs::path& shipped_folder, const fs::path& own_folder) {
    LessonShelf shelf;
    add_folder(own_folder, LessonOrigin::own, shelf);
    add_folder(shipped_folder, LessonOrigin::shipped, shelf);
    return shelf;
}

std::size_t put_on_shelf(ShelvedLesson lesson, std::vector<ShelvedLesson>& opened,
                         LessonShelf& shelf) {
    const auto is_same_file = [&](const ShelvedLesson& one) {
        std::error_code failed;
        return fs::equivalent(one.path, lesson.path, failed);
    };
    const auto known = std::find_if(opened.begin(), opened.end(), is_same_file);
    auto place = std::find_if(shelf.lessons.begin(), shelf.lessons.end(), is_same_file);
    if (known != opened.end())
        *known = lesson; // the file may have changed since
    else if (place == shelf.lessons.end())
        opened.insert(opened.begin(), lesson);
    if (place == shelf.lessons.end())
        place = shelf.lessons.insert(shelf.lessons.begin(), std::move(lesson));
    else
        place->lesson = std::move(lesson.lesson);
    return static_cast<std::size_t>(place - shelf.lessons.begin());
}

std::string save_lesson(const lesson::Lesson& lesson, const fs::path& path) {
    if (path.empty())
        return "Your lesson could not be kept: no home folder is known. Set HOME and start again.";
    std::error_code failed;
    fs::create_directories(path.parent_path(), failed);
    if (const auto written = publish::write_whole_file(path, lesson::write_lesson(lesson));
        !written)
        return "Your lesson could not be kept: " + written.error().message;
    return {};
}

fs::path free_lesson_path(const fs::path& folder, const std::string& name) {
    return free_path(folder, name, lesson::kLessonEnding, "lesson");
}

} // namespace steelyard::app
