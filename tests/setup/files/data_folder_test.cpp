#include "catch.h"
#include "setup/files/data_folder.h"

using namespace steelyard::setup;
namespace fs = std::filesystem;

TEST_CASE("A program run from the build tree finds the data of the source tree") {
    CHECK(fs::equivalent(data_folder(), STEELYARD_SOURCE_DIR));
}

TEST_CASE("A program finds its data in the prefix that it runs from, wherever that is") {
    CHECK(data_folder_for("/usr/bin/steelyard") == fs::path("/usr/share/steelyard"));
    CHECK(data_folder_for("/opt/tools/bin/steelyard") == fs::path("/opt/tools/share/steelyard"));
}
