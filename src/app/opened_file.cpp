#include "app/opened_file.h"

#include "publish/sheets/blueprint.h"

namespace steelyard::app {

namespace {

bool ends_with(const std::filesystem::path& path, std::string_view ending) {
    const std::string name = path.filename().string();
    return name.size() > ending.size() &&
           name.compare(name.size() - ending.size(), ending.size(), ending) == 0;
}

} // namespace

tl::expected<OpenedFile, setup::InputError> read_opened_file(const std::filesystem::path& path) {
    if (ends_with(path, lesson::kLessonEnding))
        return lesson::read_lesson(path).map([&](lesson::Lesson&& lesson) {
            return OpenedFile(LessonFile{path, std::move(lesson)});
        });
    if (ends_with(path, publish::kBlueprintEnding))
        return publish::read_blueprint(path).map(
            [&](const publish::Blueprint&) { return OpenedFile(BlueprintFile{path}); });
    if (ends_with(path, ".jsonl"))
        return OpenedFile(RecordFile{path});
    return setup::read_setup(path).map(
        [](setup::Setup&& setup) { return OpenedFile(std::move(setup)); });
}

} // namespace steelyard::app
