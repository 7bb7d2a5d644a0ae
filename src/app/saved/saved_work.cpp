#include "app/saved/saved_work.h"

#include "publish/files/whole_file.h"
#include "setup/setup.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <fstream>
#include <system_error>

namespace steelyard::app {

namespace {

namespace fs = std::filesystem;
using nlohmann::json;

// A stage is one file, so that a kill never pairs a new setup with an old hand.
constexpr const char* kBenchFile = "bench.json";
constexpr const char* kBodyFile = "body.json";
constexpr const char* kPairFile = "pair.json";
constexpr const char* kPreferencesFile = "preferences.json";

std::optional<fs::path> absolute_from(const char* variable) {
    const char* value = std::getenv(variable);
    if (value == nullptr || !fs::path(value).is_absolute())
        return std::nullopt;
    return fs::path(value);
}

/// Far more than a setup and its words take.
constexpr std::uintmax_t kLargestState = 8U << 20U;

/// Why a file cannot hold what was kept; empty when it may, or is not there.
std::string fault_of_file(const fs::path& path) {
    std::error_code failed;
    const fs::file_status there = fs::status(path, failed);
    if (there.type() == fs::file_type::not_found)
        return {};
    if (fs::is_directory(there))
        return "is a folder";
    if (!fs::is_regular_file(there)) // a pipe would be waited for
        return "is no plain file";
    if (fs::file_size(path, failed) > kLargestState)
        return "is far too large";
    return std::ifstream(path) ? "" : "cannot be read";
}

json read_json(const fs::path& path) {
    if (!fault_of_file(path).empty())
        return json::object();
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

const char* look_word(scene::Look look) {
    switch (look) {
    case scene::Look::dark:
        return "dark";
    case scene::Look::high_contrast:
        return "high contrast";
    case scene::Look::light:
    case scene::Look::print:
        return "light";
    }
    return "light";
}

/// The look of who has chosen none.
scene::Look usual_look(const SystemWishes& wishes = system_wishes()) {
    return wishes.dark ? scene::Look::dark : scene::Look::light;
}

/// The setup of one kind in a kept file; empty where there is none that can be read.
template <typename Kind> std::optional<Kind> setup_in(const json& read, const char* key = "setup") {
    const auto text = read.find(key);
    if (text == read.end() || !text->is_string())
        return std::nullopt;
    const auto setup = setup::parse_setup(text->get<std::string>(), "what was kept");
    const auto* kind = setup ? std::get_if<Kind>(&*setup) : nullptr;
    if (kind == nullptr)
        return std::nullopt;
    return *kind;
}

std::string words_in(const json& from, const char* key) {
    const auto found = from.find(key);
    return found != from.end() && found->is_string() ? found->get<std::string>() : std::string();
}

KeptAs kept_in(const json& read) {
    KeptAs kept{{}, words_in(read, "kept")};
    if (const fs::path file = words_in(read, "file"); !file.empty())
        kept.file = OwnFile{file, words_in(read, "file_text")};
    return kept;
}

void add_kept(const KeptAs& kept, json& to) {
    to["kept"] = kept.text;
    if (kept.file) {
        to["file"] = kept.file->path.string();
        to["file_text"] = kept.file->text;
    }
}

} // namespace

Preferences following(Preferences preferences, const SystemWishes& before,
                      const SystemWishes& now) {
    if (preferences.look == usual_look(before))
        preferences.look = usual_look(now);
    if (preferences.less_motion == before.less_motion)
        preferences.less_motion = now.less_motion;
    return preferences;
}

fs::path SavedWork::usual_folder() {
    if (const auto state = absolute_from("XDG_STATE_HOME"))
        return *state / "steelyard";
    if (const auto home = absolute_from("HOME"))
        return *home / ".local" / "state" / "steelyard";
    return {};
}

std::vector<std::string> SavedWork::faults() const {
    std::vector<std::string> faults;
    if (folder_.empty())
        return faults;
    for (const char* name : {kPreferencesFile, kBenchFile, kBodyFile, kPairFile})
        if (const std::string fault = fault_of_file(folder_ / name); !fault.empty())
            faults.push_back(fmt::format("What was remembered is left out: {} {}. Move it away.",
                                         (folder_ / name).string(), fault));
    return faults;
}

Preferences SavedWork::load_preferences() const {
    Preferences preferences;
    preferences.look = usual_look();
    preferences.less_motion = system_wishes().less_motion;
    if (folder_.empty())
        return preferences;
    const json read = read_json(folder_ / kPreferencesFile);
    for (const scene::Look look :
         {scene::Look::light, scene::Look::dark, scene::Look::high_contrast})
        if (says(read, "look", look_word(look)))
            preferences.look = look;
    if (says(read, "units", "us"))
        preferences.units = setup::UnitSystem::us;
    preferences.text_size = number_in(read, "text_size", 0.8, 2.5, 1.0);
    if (const json less = read.value("less_motion", json()); less.is_boolean())
        preferences.less_motion = less.get<bool>();
    preferences.ended_well = read.value("ended_well", json(true)) != json(false);
    preferences.shown_around = read.value("shown_around", json(false)) == json(true);
    if (const json place = read.value("place", json()); place.is_string())
        preferences.place = place.get<std::string>();
    preferences.width_px = static_cast<int>(number_in(read, "width", 480.0, 16000.0, 1280.0));
    preferences.height_px = static_cast<int>(number_in(read, "height", 360.0, 16000.0, 720.0));
    return preferences;
}

std::optional<SavedBench> SavedWork::load_bench() const {
    if (folder_.empty())
        return std::nullopt;
    const json read = read_json(folder_ / kBenchFile);
    auto setup = setup_in<setup::LeverSetup>(read);
    if (!setup)
        return std::nullopt;
    SavedBench bench{std::move(*setup), std::nullopt, kept_in(read)};
    if (read.contains("hand_N"))
        bench.hand_N = number_in(read, "hand_N", -1.0e7, 1.0e7, 0.0);
    return bench;
}

std::optional<SavedBody> SavedWork::load_body() const {
    if (folder_.empty())
        return std::nullopt;
    const json read = read_json(folder_ / kBodyFile);
    auto setup = setup_in<setup::BodySetup>(read);
    if (!setup)
        return std::nullopt;
    return SavedBody{std::move(*setup), number_in(read, "progress", 0.0, 1.0, 0.0), kept_in(read)};
}

std::optional<SavedPair> SavedWork::load_pair() const {
    if (folder_.empty())
        return std::nullopt;
    const json read = read_json(folder_ / kPairFile);
    auto a = setup_in<setup::BodySetup>(read, "a");
    auto b = setup_in<setup::BodySetup>(read, "b");
    if (!a || !b)
        return std::nullopt;
    SavedPair pair{std::move(*a), std::move(*b), number_in(read, "progress", 0.0, 1.0, 0.0), {}};
    auto lever_a = setup_in<setup::LeverSetup>(read, "lever_a");
    auto lever_b = setup_in<setup::LeverSetup>(read, "lever_b");
    if (lever_a && lever_b) {
        pair.levers = SavedLevers{std::move(*lever_a), std::move(*lever_b)};
        pair.shows_levers = says(read, "shows", "levers");
    }
    return pair;
}

std::string SavedWork::write(const char* name, const std::string& text) const {
    if (folder_.empty())
        return {};
    std::error_code failed;
    fs::create_directories(folder_, failed);
    if (const auto written = publish::write_whole_file(folder_ / name, text); !written)
        return "Your work could not be kept: " + written.error().message;
    return {};
}

std::string SavedWork::save_preferences(const Preferences& preferences) const {
    json wanted{{"units", preferences.units == setup::UnitSystem::us ? "us" : "si"},
                {"text_size", preferences.text_size},
                {"place", preferences.place},
                {"ended_well", preferences.ended_well},
                {"shown_around", preferences.shown_around},
                {"width", preferences.width_px},
                {"height", preferences.height_px}};
    // What agrees with the system's wish goes on following it.
    if (preferences.look != usual_look())
        wanted["look"] = look_word(preferences.look);
    if (preferences.less_motion != system_wishes().less_motion)
        wanted["less_motion"] = preferences.less_motion;
    return write(kPreferencesFile, wanted.dump(2) + "\n");
}

std::string SavedWork::save_bench(const SavedBench& bench) const {
    json kept{{"setup", setup::write_lever_setup(bench.setup)}};
    if (bench.hand_N)
        kept["hand_N"] = *bench.hand_N;
    add_kept(bench.kept, kept);
    return write(kBenchFile, kept.dump(2) + "\n");
}

std::string SavedWork::save_body(const SavedBody& body) const {
    json kept{{"setup", setup::write_body_setup(body.setup)}, {"progress", body.progress}};
    add_kept(body.kept, kept);
    return write(kBodyFile, kept.dump(2) + "\n");
}

std::string SavedWork::save_pair(const SavedPair& pair) const {
    json kept{{"a", setup::write_body_setup(pair.a)},
              {"b", setup::write_body_setup(pair.b)},
              {"progress", pair.progress},
              {"shows", pair.shows_levers ? "levers" : "exercises"}};
    if (pair.levers) {
        kept["lever_a"] = setup::write_lever_setup(pair.levers->a);
        kept["lever_b"] = setup::write_lever_setup(pair.levers->b);
    }
    return write(kPairFile, kept.dump(2) + "\n");
}

} // namespace steelyard::app
