#include "app/opened_file.h"

namespace steelyard::app {

namespace {

bool is_lesson(const std::filesystem::path& path) {
    const std::string name = path.filename().string();
    const std::string_view ending = setup::kLessonEnding;
    return name.size() > ending.size() &&
           name.compare(name.size() - ending.size(), ending.size(), ending) == 0;
}

} // namespace

tl::expected<OpenedFile, setup::InputError> read_opened_file(const std::filesystem::path& path) {
    if (is_lesson(path))
        return setup::read_lesson(path).map([&](setup::Lesson&& lesson) {
            return OpenedFile(LessonFile{path, std::move(lesson)});
        });
    return setup::read_setup(path).map(
        [](setup::Setup&& setup) { return OpenedFile(std::move(setup)); });
}

} // namespace steelyard::app
