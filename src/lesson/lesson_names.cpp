#include "lesson/lesson_names.h"

#include "lesson/lesson_words.h"
#include "setup/files/folder.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::lesson {
namespace {

namespace fs = std::filesystem;

std::string nearest_setup(const std::string& name, const std::vector<fs::path>& folders) {
    std::vector<std::string> names;
    for (const fs::path& folder : folders)
        for (const fs::path& path :
             setup::files_ending(folder, setup::kSetupEnding).value_or(std::vector<fs::path>{})) {
            const std::string file = path.filename().string();
            names.push_back(file.substr(0, file.size() - setup::kSetupEnding.size()));
        }
    return setup::nearest_spelling(name, {names.begin(), names.end()});
}

} // namespace

StageMarks read_marks(setup::TomlReader& step, std::string_view key) {
    StageMarks marks;
    const std::vector<std::string_view> names = mark_names();
    for (const std::string& name : step.texts(key).value_or(std::vector<std::string>{})) {
        const auto found = std::find(names.begin(), names.end(), name);
        if (found != names.end()) {
            marks.insert(static_cast<StageMark>(found - names.begin()));
            continue;
        }
        const std::string nearest = setup::nearest_spelling(name, names);
        std::string list;
        for (const std::string_view one : names)
            list += fmt::format("{}\"{}\"", list.empty() ? "" : ", ", one);
        step.add_error(key, fmt::format("\"{}\"", name), "marks of the stage: " + list,
                       nearest.empty() ? "" : fmt::format("Did you mean \"{}\"?", nearest));
    }
    return marks;
}

tl::expected<fs::path, setup::InputError> find_setup(const std::string& name,
                                                     const std::vector<fs::path>& folders) {
    std::error_code failed;
    // A name alone: none that leads out of the folders.
    const bool is_name = fs::path(name).filename() == fs::path(name);
    for (const fs::path& folder : is_name ? folders : std::vector<fs::path>{})
        for (const std::string& file : {name, name + std::string(setup::kSetupEnding)})
            if (fs::is_regular_file(folder / file, failed))
                return folder / file;
    const std::string nearest = nearest_setup(name, folders);
    return tl::make_unexpected(setup::InputError{
        "", 0, 0, "setup", fmt::format("\"{}\"", name),
        "the name of a setup beside this file or of one that comes with the program, such as "
        "\"seesaw\"",
        nearest.empty() ? "" : fmt::format("Did you mean \"{}\"?", nearest)});
}

tl::expected<setup::Setup, setup::InputError> named_setup(const std::string& name) {
    return find_setup(name, setup_folders({})).and_then([](const fs::path& path) {
        return setup::read_setup(path);
    });
}

} // namespace steelyard::lesson
