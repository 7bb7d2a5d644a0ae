#include "catch.h"
#include "setup/setup.h"

#include <filesystem>
#include <fstream>
#include <string>

using namespace steelyard::setup;
namespace fs = std::filesystem;

namespace {

struct ScratchFolder {
    fs::path path = fs::temp_directory_path() / "steelyard_setup_list";
    ScratchFolder() {
        fs::remove_all(path);
        fs::create_directories(path);
    }
    ~ScratchFolder() { fs::remove_all(path); }
    void add(const std::string& name, const std::string& text) const {
        std::ofstream(path / name, std::ios::binary) << text;
    }
};

std::string lever_file(const std::string& name, int order) {
    return "kind = \"lever\"\nname = \"" + name +
           "\"\ndescription = \"x\"\norder = " + std::to_string(order) +
           "\nlength = \"1 m\"\naxis = \"50 cm\"\n[effort]\nat = \"1 m\"\ndirection = \"down\"\n";
}

} // namespace

TEST_CASE("a folder lists its setups in order, broken ones at the end with their errors",
          "[setup]") {
    const ScratchFolder folder;
    folder.add("b.setup.toml", lever_file("second", 20));
    folder.add("z.setup.toml", lever_file("first", 10));
    folder.add("a.setup.toml", "kind = \"levre\"\n");
    folder.add("e.setup.toml", "");
    folder.add("readme.md", "not a setup");
    const auto listings = list_setups(folder.path);
    REQUIRE(listings.has_value());
    REQUIRE(listings->size() == 4);
    CHECK(head_of(*(*listings)[0].setup).name == "first");
    CHECK(head_of(*(*listings)[1].setup).name == "second");
    REQUIRE_FALSE((*listings)[2].setup.has_value());
    CHECK((*listings)[2].setup.error().mend == "Did you mean \"lever\"?");
    CHECK((*listings)[3].setup.error().found == "an empty file");
}

TEST_CASE("a folder that cannot be read is said to be none", "[setup]") {
    CHECK_FALSE(list_setups("no/such/folder").has_value());
}
