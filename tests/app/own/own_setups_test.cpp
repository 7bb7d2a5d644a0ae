#include "app/bench/sample_bench.h"
#include "app/own/own_setups.h"
#include "app/shelf/shelf.h"
#include "app/shelf/shelf_view.h"
#include "catch.h"
#include "temp_folder.h"

using namespace steelyard;
using namespace steelyard::app;
namespace fs = std::filesystem;

namespace {

/// As someone would write it: a note, and an order of their own.
constexpr const char* kByHand = R"(# my first lever
name = "Plank"
kind = "lever"
description = "A stone and a hand."
axis = "40 cm"
length = "1 m"

[effort]
at = "1 m"
direction = "down"

[[load]]
at = 0
mass = "10 kg"
)";

std::vector<std::string> names_in(const OwnSetups& own) {
    std::vector<std::string> faults;
    std::vector<std::string> names;
    for (const OwnSetup& one : own.all(faults))
        names.push_back(head_of(one.setup).name);
    CHECK(faults.empty());
    return names;
}

setup::LeverSetup heavier_sample() {
    setup::LeverSetup setup = sample_setup();
    setup.head.name = "Plank";
    std::get<mechanics::Weight>(setup.lever.loads[0].action).mass_kg = 20.0;
    return setup;
}

} // namespace

TEST_CASE("what is kept is found again, bit for bit, under its name") {
    const TempFolder folder;
    const OwnSetups own(fs::path(folder / "setups"));
    std::vector<std::string> faults;
    CHECK(own.all(faults).empty());
    const auto kept = own.keep_new(sample_setup(), "My plank");
    REQUIRE(kept);
    CHECK(kept->path.filename() == "my-plank.setup.toml");
    CHECK(content(kept->path) == kept->text);
    const std::vector<OwnSetup> all = own.all(faults);
    REQUIRE(all.size() == 1);
    CHECK(head_of(all[0].setup).name == "My plank");
    CHECK(all[0].file == *kept);
    setup::LeverSetup expected = sample_setup();
    expected.head.name = "My plank";
    CHECK(setup::write_setup(all[0].setup) == setup::write_lever_setup(expected));
}

TEST_CASE("a name is asked for, and each is given once") {
    const TempFolder folder;
    const OwnSetups own{fs::path(folder.path())};
    CHECK_FALSE(own.keep_new(sample_setup(), ""));
    CHECK_FALSE(own.keep_new(sample_setup(), "   "));
    REQUIRE(own.keep_new(sample_setup(), "Plank"));
    const auto again = own.keep_new(sample_setup(), "PLANK");
    REQUIRE_FALSE(again);
    CHECK(again.error().find("PLANK") != std::string::npos);
    CHECK(folder.count() == 1);
}

TEST_CASE("keeping it again changes its file, and a renamed one leaves no second") {
    const TempFolder folder;
    const OwnSetups own{fs::path(folder.path())};
    const auto first = own.keep_new(sample_setup(), "Plank");
    REQUIRE(first);
    const auto second = own.keep_again(heavier_sample(), *first);
    REQUIRE(second);
    CHECK(second->path == first->path);
    CHECK(content(second->path) == setup::write_lever_setup(heavier_sample()));
    const auto renamed = own.keep_renamed(heavier_sample(), "Keg", *second);
    REQUIRE(renamed);
    CHECK(names_in(own) == std::vector<std::string>{"Keg"});
}

TEST_CASE("a file that another program has changed or removed is not written over") {
    const TempFolder folder;
    const OwnSetups own{fs::path(folder.path())};
    const auto kept = own.keep_new(sample_setup(), "Plank");
    REQUIRE(kept);
    folder.put("plank.setup.toml", kByHand);
    REQUIRE_FALSE(own.keep_again(heavier_sample(), *kept));
    REQUIRE_FALSE(own.keep_renamed(heavier_sample(), "Keg", *kept));
    CHECK(content(kept->path) == kByHand);
    fs::remove(kept->path);
    CHECK_FALSE(own.keep_again(heavier_sample(), *kept));
    CHECK_FALSE(fs::exists(kept->path));
}

TEST_CASE("what was written by hand stays beside the file before the first change") {
    const TempFolder folder;
    const OwnSetups own{fs::path(folder.path())};
    folder.put("plank.setup.toml", kByHand);
    std::vector<std::string> faults;
    const std::vector<OwnSetup> all = own.all(faults);
    REQUIRE(all.size() == 1);
    const auto once = own.keep_again(heavier_sample(), all[0].file);
    REQUIRE(once);
    REQUIRE(own.keep_again(sample_setup(), *once));
    CHECK(content(folder / "plank.setup.toml.before") == kByHand);
    CHECK(names_in(own).size() == 1); // what lies beside it is not on the shelf
}

TEST_CASE("a removed one can be put back") {
    const TempFolder folder;
    const OwnSetups own{fs::path(folder.path())};
    const auto kept = own.keep_new(sample_setup(), "Plank");
    REQUIRE(kept);
    const auto removed = own.remove(kept->path);
    REQUIRE(removed);
    CHECK(names_in(own).empty());
    CHECK(own.put_back(*removed).empty());
    CHECK(names_in(own) == std::vector<std::string>{"Plank"});
    CHECK_FALSE(own.remove(folder / "absent.setup.toml"));
}

TEST_CASE("a folder that cannot be written to is said") {
    const TempFile in_the_way("setups", "no folder");
    const OwnSetups own{fs::path(in_the_way.path())};
    const auto kept = own.keep_new(sample_setup(), "Plank");
    REQUIRE_FALSE(kept);
    CHECK(kept.error().find("could not be saved") != std::string::npos);
    CHECK_FALSE(OwnSetups{fs::path{}}.keep_new(sample_setup(), "Plank"));
}

TEST_CASE("a file of the folder is known when it is opened by its path") {
    const TempFolder folder;
    const OwnSetups own{fs::path(folder.path())};
    const auto kept = own.keep_new(sample_setup(), "Plank");
    REQUIRE(kept);
    CHECK(own.file_at(kept->path) == *kept);
    const TempFile elsewhere("plank.setup.toml", kByHand);
    CHECK_FALSE(own.file_at(elsewhere.path()));
    CHECK_FALSE(own.file_at({}));
}

TEST_CASE("the person's own stand before the others on the shelf, broken files below") {
    const TempFolder folder;
    const OwnSetups own{fs::path(folder.path())};
    REQUIRE(own.keep_new(sample_setup(), "Zebra crossing"));
    REQUIRE(own.keep_new(sample_setup(), "an early one"));
    folder.put("broken.setup.toml", "kind = ");
    const LeverShelf shipped = read_levers(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups");
    const LeverShelf shelf = with_own(own, shipped);
    REQUIRE(shelf.setups.size() == shipped.setups.size() + 2);
    CHECK(shelf.setups[0].setup.head.name == "an early one");
    CHECK(shelf.setups[1].origin == Origin::own);
    CHECK(shelf.setups[2].origin == Origin::shipped);
    CHECK(shelf.faults.size() == 1);
}

TEST_CASE("the shelf is searched by all words of a card") {
    std::vector<ShelfCard> cards(3);
    cards[0].name = "Wheelbarrow";
    cards[0].first_line = "Second class";
    cards[1].name = "Launch trolley";
    cards[1].first_line = "Second class";
    cards[2].name = "Seesaw";
    using Found = std::vector<std::size_t>;
    CHECK(cards_with(cards, "") == Found{0, 1, 2});
    CHECK(cards_with(cards, "second") == Found{0, 1});
    CHECK(cards_with(cards, " CLASS  trolley") == Found{1});
    CHECK(cards_with(cards, "third").empty());
}
