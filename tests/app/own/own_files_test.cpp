#include "app/own/own_files.h"
#include "catch.h"
#include "temp_folder.h"

using namespace steelyard::app;
namespace fs = std::filesystem;

TEST_CASE("a file is named after the letters and digits of its title") {
    const TempFolder folder;
    const auto name = [&](const std::string& title) {
        return free_path(folder.path(), title, ".setup.toml", "setup").filename().string();
    };
    CHECK(name("Lateral raise, arms straight") == "lateral-raise-arms-straight.setup.toml");
    CHECK(name("../../etc/passwd") == "etc-passwd.setup.toml");
    CHECK(name("  --  ") == "setup.setup.toml");
    CHECK(name("Ü 5") == "5.setup.toml");
    CHECK(name(std::string(300, 'x')).size() <= 80);
}

TEST_CASE("a name that is taken gets a number") {
    const TempFolder folder;
    folder.put("plank.setup.toml", "");
    folder.put("plank-2.setup.toml", "");
    CHECK(free_path(folder.path(), "Plank", ".setup.toml", "setup").filename() ==
          "plank-3.setup.toml");
}

TEST_CASE("where no home is known there is no file") {
    CHECK(free_path({}, "Plank", ".setup.toml", "setup").empty());
}
