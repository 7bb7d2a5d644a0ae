#include "app/bench/sample_bench.h"
#include "app/saved/saved_work.h"
#include "app/shelf/shelf.h"
#include "app/side_by_side/sample_pair.h"
#include "catch.h"
#include "mechanics/lever/random_lever.h"

#include <csignal>
#include <cstdlib>
#include <fstream>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace steelyard;
using namespace steelyard::app;
namespace fs = std::filesystem;

namespace {

/// A folder that is there for one test.
class TemporaryFolder {
public:
    TemporaryFolder() {
        std::string pattern = (fs::temp_directory_path() / "steelyard-saved-XXXXXX").string();
        REQUIRE(mkdtemp(pattern.data()) != nullptr);
        path_ = pattern;
    }
    ~TemporaryFolder() {
        std::error_code ignored;
        fs::remove_all(path_, ignored);
    }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;

    const fs::path& path() const { return path_; }
    void write(const char* name, const std::string& text) const {
        std::ofstream(path_ / name) << text;
    }

private:
    fs::path path_;
};

std::string exact_text_of(const SavedBench& bench) {
    return exact_text(BenchState{bench.setup, bench.hand_N});
}

void check_defaults(const SavedWork& saved) {
    const Preferences read = saved.load_preferences();
    const Preferences usual;
    CHECK(read.look == usual.look);
    CHECK(read.units == usual.units);
    CHECK(read.text_size == usual.text_size);
    CHECK(read.width_px == usual.width_px);
    CHECK(read.height_px == usual.height_px);
}

} // namespace

TEST_CASE("what was kept is read back exactly") {
    const TemporaryFolder folder;
    const SavedWork saved(folder.path() / "not" / "there yet");
    const Preferences liked{scene::Look::high_contrast,
                            setup::UnitSystem::us,
                            1.25,
                            true,
                            "Body",
                            false,
                            true,
                            1111,
                            777};
    const SavedBench bench{sample_setup(), 1.0 / 3.0,
                           KeptAs{OwnFile{"/home/ada/plank.setup.toml", "its text"}, "as kept"}};
    CHECK(saved.save_preferences(liked).empty());
    CHECK(saved.save_bench(bench).empty());
    const Preferences read = saved.load_preferences();
    CHECK(read.look == liked.look);
    CHECK(read.units == liked.units);
    CHECK(read.text_size == liked.text_size);
    CHECK(read.less_motion == liked.less_motion);
    CHECK(read.place == liked.place);
    CHECK(read.width_px == liked.width_px);
    CHECK(read.height_px == liked.height_px);
    const auto kept = saved.load_bench();
    REQUIRE(kept);
    CHECK(exact_text_of(*kept) == exact_text_of(bench));
    CHECK(kept->hand_N == bench.hand_N);
    CHECK(kept->kept == bench.kept);
}

TEST_CASE("a pair of exercises is kept with the levers that were compared") {
    const TemporaryFolder folder;
    const SavedWork saved(folder.path());
    setup::LeverSetup other = sample_setup();
    other.lever.axis_at_m = 0.7;
    SavedPair pair{shipped_exercise("crate-near"), shipped_exercise("crate-far"), 0.25, {}};
    REQUIRE(saved.save_pair(pair).empty());
    auto kept = saved.load_pair();
    REQUIRE(kept);
    CHECK(setup::write_body_setup(kept->b) == setup::write_body_setup(pair.b));
    CHECK(kept->progress == 0.25);
    CHECK_FALSE(kept->levers);
    CHECK_FALSE(kept->shows_levers);
    pair.levers = SavedLevers{sample_setup(), other};
    pair.shows_levers = true;
    REQUIRE(saved.save_pair(pair).empty());
    kept = saved.load_pair();
    REQUIRE(kept);
    REQUIRE(kept->levers);
    CHECK(kept->shows_levers);
    CHECK(kept->levers->a.lever.axis_at_m == sample_setup().lever.axis_at_m);
    CHECK(kept->levers->b.lever.axis_at_m == 0.7);
}

TEST_CASE("any lever comes back bit for bit") {
    const TemporaryFolder folder;
    const SavedWork saved(folder.path());
    mechanics::RandomNumbers random(3);
    for (int i = 0; i < 100; ++i) {
        SavedBench bench;
        bench.setup.head.name = "random";
        bench.setup.lever = mechanics::random_lever(random, {true, true, i % 2 == 0});
        REQUIRE(saved.save_bench(bench).empty());
        const auto kept = saved.load_bench();
        REQUIRE(kept);
        CHECK(kept->setup.lever.axis_at_m == bench.setup.lever.axis_at_m);
        CHECK(kept->setup.lever.effort.direction_rad == bench.setup.lever.effort.direction_rad);
        CHECK(kept->setup.lever.path_m == bench.setup.lever.path_m);
        CHECK(kept->setup.lever.loads.size() == bench.setup.lever.loads.size());
        const auto solved = mechanics::solve_lever(bench.setup.lever);
        const auto solved_again = mechanics::solve_lever(kept->setup.lever);
        REQUIRE(solved_again);
        CHECK(solved_again->effort_N == solved->effort_N);
    }
}

TEST_CASE("nothing kept, or nothing that can be read, gives the usual preferences and no lever") {
    const TemporaryFolder folder;
    const SavedWork saved(folder.path());
    check_defaults(saved);
    CHECK_FALSE(saved.load_bench());
    const std::string binary("\x00\xff\xfe{[\x01", 6);
    for (const std::string& broken :
         {std::string(), std::string("{"), std::string("[1, 2]"), std::string("kind = 3"), binary,
          std::string("{\"look\": 7, \"units\": null, \"text_size\": \"big\", \"width\": []}")}) {
        folder.write("preferences.json", broken);
        folder.write("bench.json", broken);
        INFO("file: " << broken);
        check_defaults(saved);
        CHECK_FALSE(saved.load_bench());
    }
}

TEST_CASE("what agreed with the system's wishes follows them, what was chosen otherwise stays") {
    const SystemWishes day;
    const SystemWishes night{true, true};
    Preferences preferences;
    CHECK(following(preferences, day, night).look == scene::Look::dark);
    CHECK(following(preferences, day, night).less_motion);
    const Preferences there = following(preferences, day, night);
    CHECK(following(there, night, day).look == scene::Look::light);
    CHECK_FALSE(following(there, night, day).less_motion);
    preferences.look = scene::Look::high_contrast;
    preferences.less_motion = true;
    CHECK(following(preferences, day, night).look == scene::Look::high_contrast);
    CHECK(following(preferences, day, night).less_motion);
    CHECK(following(preferences, day, day).less_motion);
}

TEST_CASE("kept numbers out of bounds are brought within them") {
    const TemporaryFolder folder;
    const SavedWork saved(folder.path());
    folder.write(
        "preferences.json",
        R"({"text_size": 1e300, "width": -5, "height": 1e99, "less_motion": 1, "place": 3})");
    const Preferences read = saved.load_preferences();
    CHECK(read.text_size == 2.5);
    CHECK_FALSE(read.less_motion);
    CHECK(read.place.empty());
    CHECK(read.width_px == 480);
    CHECK(read.height_px == 16000);
}

TEST_CASE("a folder that cannot be written gives a sentence, not an end") {
    const TemporaryFolder folder;
    folder.write("file", "a file is no folder"); // also root cannot write below it
    const SavedWork saved(folder.path() / "file" / "steelyard");
    const std::string fault = saved.save_bench({sample_setup(), std::nullopt});
    INFO(fault);
    CHECK(fault.find("could not be kept") != std::string::npos);
    CHECK(fault.find("steelyard") != std::string::npos); // where
    CHECK_FALSE(saved.load_bench());
}

TEST_CASE("a remembered file that is a folder, a pipe or closed is passed over and spoken of") {
    const TemporaryFolder folder;
    const SavedWork saved(folder.path());
    CHECK(saved.faults().empty());
    fs::create_directory(folder.path() / "bench.json");
    REQUIRE(mkfifo((folder.path() / "body.json").c_str(), 0600) == 0);
    folder.write("preferences.json", "{}");
    const auto faults = saved.faults();
    REQUIRE(faults.size() == 2);
    CHECK_THAT(faults[0], ContainsSubstring("bench.json is a folder"));
    CHECK_THAT(faults[1], ContainsSubstring("body.json is no plain file"));
    CHECK_FALSE(saved.load_bench());
    CHECK_FALSE(saved.load_body()); // would wait for ever at the pipe
    CHECK(saved.load_preferences().text_size > 0.5);
}

TEST_CASE("without a home nothing is remembered and nothing fails") {
    const SavedWork saved{fs::path()};
    CHECK(saved.save_bench({sample_setup(), std::nullopt}).empty());
    check_defaults(saved);
    CHECK_FALSE(saved.load_bench());
}

TEST_CASE("a kill at any moment leaves the old lever or the new one, whole") {
    const TemporaryFolder folder;
    const SavedWork saved(folder.path());
    setup::LeverSetup other = sample_setup();
    other.lever.axis_at_m = 0.7;
    const SavedBench first{sample_setup(), std::nullopt};
    const SavedBench second{other, 12.5}; // the effort by hand belongs to its lever
    REQUIRE(saved.save_bench(first).empty());
    for (int round = 0; round < 30; ++round) {
        const pid_t child = fork();
        REQUIRE(child >= 0);
        if (child == 0) {
            for (;;) {
                static_cast<void>(saved.save_bench(second));
                static_cast<void>(saved.save_bench(first));
            }
        }
        usleep(static_cast<useconds_t>(500 + 977 * round));
        kill(child, SIGKILL);
        waitpid(child, nullptr, 0);
        const auto kept = saved.load_bench();
        REQUIRE(kept);
        const double axis_at_m = kept->setup.lever.axis_at_m;
        CHECK((axis_at_m == 0.4 || axis_at_m == 0.7));
        CHECK(kept->hand_N.has_value() == (axis_at_m == 0.7));
    }
}

TEST_CASE("the folder follows the XDG Base Directory Specification") {
    // Source: XDG Base Directory Specification 0.8: $XDG_STATE_HOME, by default
    // $HOME/.local/state; relative paths are to be ignored.
    const char* state_before = std::getenv("XDG_STATE_HOME");
    const char* home_before = std::getenv("HOME");
    const std::string state = state_before != nullptr ? state_before : "";
    const std::string home = home_before != nullptr ? home_before : "";
    setenv("HOME", "/home/someone", 1);
    setenv("XDG_STATE_HOME", "/somewhere", 1);
    CHECK(SavedWork::usual_folder() == "/somewhere/steelyard");
    setenv("XDG_STATE_HOME", "relative/path", 1);
    CHECK(SavedWork::usual_folder() == "/home/someone/.local/state/steelyard");
    unsetenv("XDG_STATE_HOME");
    CHECK(SavedWork::usual_folder() == "/home/someone/.local/state/steelyard");
    unsetenv("HOME");
    CHECK(SavedWork::usual_folder().empty());
    if (state_before != nullptr)
        setenv("XDG_STATE_HOME", state.c_str(), 1);
    if (home_before != nullptr)
        setenv("HOME", home.c_str(), 1);
}
