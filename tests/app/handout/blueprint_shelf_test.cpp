#include "app/handout/blueprint_shelf.h"
#include "catch.h"
#include "temp_folder.h"

#include <algorithm>

using namespace steelyard;
using namespace steelyard::app;

namespace {

BlueprintPlaces shipped_only() {
    BlueprintPlaces places;
    places.shipped = std::filesystem::path(STEELYARD_SOURCE_DIR) / "assets" / "blueprints";
    return places;
}

constexpr const char* kOwn = "title = \"Mine\"\n[[part]]\ncount = 2\n";

} // namespace

TEST_CASE("a person's own blueprints stand before the shipped ones, broken ones are told") {
    const TempFolder own;
    const std::string mine = own.put("mine.blueprint.toml", kOwn);
    own.put("broken.blueprint.toml", "title = \"Broken\"\n[[part]]\ncuont = 2\n");
    own.put("notes.txt", "nothing");
    BlueprintPlaces places = shipped_only();
    const std::size_t shipped = read_blueprint_shelf(places).blueprints.size();
    REQUIRE(shipped > 0);
    places.own = own.path();
    const BlueprintShelf shelf = read_blueprint_shelf(places);
    CHECK(shelf.blueprints.size() == shipped + 1);
    CHECK(shelf.blueprints.front().title == "Mine");
    CHECK(place_on_shelf(shelf, mine) == 0);
    CHECK(place_on_shelf(shelf, "no such file") == 0);
    REQUIRE(shelf.faults.size() == 1);
    CHECK_THAT(shelf.faults.front(), ContainsSubstring("broken.blueprint.toml"));
    CHECK_THAT(shelf.faults.front(), ContainsSubstring("line 3"));
    CHECK_THAT(shelf.faults.front(), ContainsSubstring("count"));
}

TEST_CASE("a file that was opened stands on the shelf once, as it is now") {
    const TempFolder folder;
    BlueprintPlaces places = shipped_only();
    places.opened = {folder.put("mine.blueprint.toml", kOwn)};
    places.own = folder.path();
    CHECK(read_blueprint_shelf(places).blueprints.front().title == "Mine");
    folder.put("mine.blueprint.toml", "title = \"Changed\"\n[[part]]\n");
    const BlueprintShelf shelf = read_blueprint_shelf(places);
    CHECK(shelf.blueprints.front().title == "Changed");
    CHECK(std::count_if(shelf.blueprints.begin(), shelf.blueprints.end(),
                        [](const publish::Blueprint& one) { return one.title == "Changed"; }) == 1);
    places.opened.push_back(folder / "gone.blueprint.toml");
    CHECK(read_blueprint_shelf(places).faults.size() == 1);
}

TEST_CASE("someone without a folder of their own has the shipped blueprints and no fault") {
    BlueprintPlaces places = shipped_only();
    places.own = "/no/such/folder";
    const BlueprintShelf shelf = read_blueprint_shelf(places);
    CHECK(shelf.faults.empty());
    CHECK_FALSE(shelf.blueprints.empty());
    places.shipped = "/no/such/folder";
    CHECK(read_blueprint_shelf(places).faults.size() == 1);
}
