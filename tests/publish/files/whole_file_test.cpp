#include "catch.h"
#include "publish/files/held_file.h"
#include "publish/files/whole_file.h"
#include "publish/small_disk.h"
#include "temp_folder.h"

#include <chrono>

using namespace steelyard::publish;
namespace fs = std::filesystem;

TEST_CASE("bytes are written as they are, and replace what was there") {
    const TempFolder folder;
    const fs::path path = folder / "figure.svg";
    const std::string bytes("a\r\n\0b\xFF", 6);
    REQUIRE(write_whole_file(path, "something longer that was there before"));
    REQUIRE(write_whole_file(path, bytes));
    CHECK(content(path) == bytes);
    CHECK(folder.count() == 1);
}

TEST_CASE("a file that is filled piece by piece stands there whole or not at all") {
    const TempFolder folder;
    const fs::path path = folder / "paper.pdf";
    REQUIRE(write_whole_file(path, [](std::FILE* file) -> tl::expected<void, PublishError> {
        std::fputs("one", file);
        std::rewind(file);
        CHECK(std::fgetc(file) == 'o'); // can be read back
        std::fseek(file, 0, SEEK_END);
        std::fputs(", two", file);
        return {};
    }));
    CHECK(content(path) == "one, two");
    const auto stopped = write_whole_file(path, [](std::FILE* file) {
        std::fputs("half", file);
        return tl::expected<void, PublishError>(
            tl::make_unexpected(PublishError{PublishFault::stopped, "Stopped."}));
    });
    REQUIRE_FALSE(stopped);
    CHECK(stopped.error().fault == PublishFault::stopped);
    CHECK(content(path) == "one, two");
    CHECK(folder.count() == 1);
}

TEST_CASE("a missing folder is an error that names the file") {
    const TempFolder folder;
    const auto written = write_whole_file(folder / "no/such/figure.svg", "x");
    REQUIRE_FALSE(written);
    CHECK(written.error().fault == PublishFault::cannot_write);
    CHECK_THAT(written.error().message, ContainsSubstring("no/such/figure.svg"));
    CHECK(folder.count() == 0);
}

TEST_CASE("a folder is not overwritten by a file") {
    const TempFolder folder;
    fs::create_directory(folder / "figures");
    CHECK_FALSE(write_whole_file(folder / "figures", "x"));
    CHECK(fs::is_directory(folder / "figures"));
    CHECK(folder.count() == 1);
}

TEST_CASE("a full disk leaves the old file and no half file") {
    const TempFolder folder;
    const fs::path path = folder / "figure.svg";
    REQUIRE(write_whole_file(path, "old"));
    {
        const SmallDisk disk(100000);
        const auto written = write_whole_file(path, std::string(1000000, 'x'));
        REQUIRE_FALSE(written);
        CHECK(written.error().fault == PublishFault::cannot_write);
    }
    CHECK(content(path) == "old");
    CHECK(folder.count() == 1);
}

TEST_CASE("a full device is an error and stays a device") {
    if (!fs::exists("/dev/full")) {
        WARN("skipped: this system has no /dev/full");
        return;
    }
    const auto written = write_whole_file("/dev/full", "x");
    REQUIRE_FALSE(written);
    CHECK_THAT(written.error().message, ContainsSubstring("space"));
    CHECK(fs::is_character_file("/dev/full"));
    CHECK(write_whole_file("/dev/null", "x"));
    CHECK(fs::is_character_file("/dev/null"));
}

TEST_CASE("a link is followed, not replaced") {
    const TempFolder folder;
    REQUIRE(write_whole_file(folder / "real.svg", "old"));
    fs::create_symlink(folder / "real.svg", folder / "link.svg");
    REQUIRE(write_whole_file(folder / "link.svg", "new"));
    CHECK(fs::is_symlink(folder / "link.svg"));
    CHECK(content(folder / "real.svg") == "new");
}

TEST_CASE("what a killed program left of a file is cleared away, what another is writing is not") {
    const TempFolder folder;
    const auto an_hour_ago = fs::file_time_type::clock::now() - std::chrono::hours(1);
    const std::string dead = folder.put(".figure.svg.part0", "half of it");
    const std::string fresh = folder.put(".figure.svg.part1", "begun a moment ago");
    const std::string mine = folder.put("figure.svg.part0", "somebody's own");
    auto held = make_held_file(folder / ".figure.svg.part2");
    REQUIRE(held);
    for (const std::string& path : {dead, mine, folder / ".figure.svg.part2"})
        fs::last_write_time(path, an_hour_ago);
    CHECK(is_left_behind(dead));
    CHECK_FALSE(is_left_behind(fresh));
    CHECK_FALSE(is_left_behind(folder / ".figure.svg.part2"));
    REQUIRE(write_whole_file(folder / "figure.svg", "mine"));
    CHECK(content(folder / "figure.svg") == "mine");
    CHECK_FALSE(fs::exists(dead));
    CHECK(content(fresh) == "begun a moment ago");
    CHECK(content(mine) == "somebody's own");
    CHECK(fs::exists(folder / ".figure.svg.part2"));
    held.reset();
    CHECK(is_left_behind(folder / ".figure.svg.part2"));
}
