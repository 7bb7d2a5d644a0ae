#include "app/saved/saved_work.h"

#include "publish/whole_file.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdlib>
#include <fstream>

namespace steelyard::app {

namespace {

namespace fs = std::filesystem;
using nlohmann::json;

constexpr const char* kBenchFile = "bench.setup.toml";
constexpr const char* kPreferencesFile = "preferences.json";

std::optional<fs::path> absolute_from(const char* variable) {
    const char* value = std::getenv(variable);
    if (value == nullptr || !fs::path(value).is_absolute())
        return std::nullopt;
    return fs::path(value);
}

json read_json(const fs::path& path) {
    std::ifstream file(path);
    json read = json::parse(file, nullptr, false);
    return read.is_object() ? read : json::object();
}

/// A number of the file within its bounds; the default for anything else.
double number_in(const json& from, const char* key, double low, double high, double otherwise) {
    const auto found = from.find(key);
    if (found == from.end() || !found->is_number())
        return otherwise;
    return std::clamp(found->get<double>(), low, high);
}

bool says(const json& from, const char* key, const char* word) {
    const auto found = from.find(key);
    return found != from.end() && found->is_string() && found->get<std::string>() == word;
}

} // namespace

fs::path SavedWork::usual_folder() {
    if (const auto state = absolute_from("XDG_STATE_HOME"))
        return *state / "steelyard";
    if (const auto home = absolute_from("HOME"))
        return *home / ".local" / "state" / "steelyard";
    return {};
}

Preferences SavedWork::load_preferences() const {
    Preferences preferences;
    if (folder_.empty())
        return preferences;
    const json read = read_json(folder_ / kPreferencesFile);
    if (says(read, "look", "dark"))
        preferences.look = scene::Look::dark;
    if (says(read, "units", "us"))
        preferences.units = setup::UnitSystem::us;
    preferences.text_size = number_in(read, "text_size", 0.8, 2.5, 1.0);
    preferences.width_px = static_cast<int>(number_in(read, "width", 480.0, 16000.0, 1280.0));
    preferences.height_px = static_cast<int>(number_in(read, "height", 360.0, 16000.0, 720.0));
    return preferences;
}

std::optional<SavedBench> SavedWork::load_bench() const {
    std::error_code ignored;
    if (folder_.empty() || !fs::exists(folder_ / kBenchFile, ignored))
        return std::nullopt;
    auto setup = setup::read_lever_setup(folder_ / kBenchFile);
    if (!setup)
        return std::nullopt;
    SavedBench bench{std::move(*setup), std::nullopt};
    const json read = read_json(folder_ / kPreferencesFile);
    if (read.contains("hand_N"))
        bench.hand_N = number_in(read, "hand_N", -1.0e7, 1.0e7, 0.0);
    return bench;
}

std::string SavedWork::save(const Preferences& preferences, const SavedBench& bench) const {
    if (folder_.empty())
        return {};
    std::error_code failed;
    fs::create_directories(folder_, failed);
    json wanted{{"look", preferences.look == scene::Look::dark ? "dark" : "light"},
                {"units", preferences.units == setup::UnitSystem::us ? "us" : "si"},
                {"text_size", preferences.text_size},
                {"width", preferences.width_px},
                {"height", preferences.height_px}};
    if (bench.hand_N)
        wanted["hand_N"] = *bench.hand_N;
    for (const auto& [name, text] : {std::pair{kBenchFile, setup::write_lever_setup(bench.setup)},
                                     std::pair{kPreferencesFile, wanted.dump(2) + "\n"}})
        if (const auto written = publish::write_whole_file(folder_ / name, text); !written)
            return "Your work could not be kept: " + written.error().message;
    return {};
}

} // namespace steelyard::app
