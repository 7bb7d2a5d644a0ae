#include "catch.h"
#include "setup/data_folder.h"

using namespace steelyard::setup;
namespace fs = std::filesystem;

TEST_CASE("a program run from the build tree finds the data in the source tree") {
    CHECK(data_folder() == fs::path(STEELYARD_SOURCE_DIR));
    CHECK(data_folder_for(std::nullopt, "/somewhere") == fs::path("/somewhere"));
}

TEST_CASE("an installed program finds the data beside it") {
    const fs::path prefix = fs::temp_directory_path() / "steelyard_data_folder_test";
    fs::create_directories(prefix / "share" / "steelyard");
    CHECK(data_folder_for(prefix / "bin" / "steelyard", "/somewhere") ==
          prefix / "share" / "steelyard");
    fs::remove_all(prefix);
    CHECK(data_folder_for(prefix / "bin" / "steelyard", "/somewhere") == fs::path("/somewhere"));
}
