// The verbs that write files: draw, figure, handout, export.

#include "catch.h"
#include "cli/run_here.h"
#include "outside_program.h"
#include "publish/small_disk.h"
#include "temp_folder.h"

#include <filesystem>
#include <fstream>
#include <utility>

namespace fs = std::filesystem;

namespace {

/// Width and height from a PNG's header (PNG, third edition, section 11.2.2).
std::pair<int, int> png_size(const std::string& bytes) {
    const auto number = [&](std::size_t at) {
        int value = 0;
        for (std::size_t i = 0; i < 4; ++i)
            value = value << 8 | static_cast<unsigned char>(bytes.at(at + i));
        return value;
    };
    return {number(16), number(20)};
}

} // namespace

TEST_CASE("draw writes the format that the name asks for, in the size that was asked for") {
    const TempFolder folder;
    CHECK(
        run_here({"draw", "wheelbarrow", "--out", folder / "a.png", "--size", "640x360"}).status ==
        0);
    CHECK(png_size(content(folder / "a.png")) == std::pair(640, 360));
    CHECK(run_here({"draw", "wheelbarrow", "--out", folder / "b.SVG", "--look", "dark"}).status ==
          0);
    CHECK_THAT(content(folder / "b.SVG"), ContainsSubstring("width=\"1280\" height=\"720\""));
    CHECK_THAT(content(folder / "b.SVG"), ContainsSubstring("Wheelbarrow"));
    CHECK(run_here({"draw", "wheelbarrow", "--out", folder / "c.pdf"}).status == 0);
    CHECK(content(folder / "c.pdf").substr(0, 5) == "%PDF-");
    CHECK(folder.count() == 3);
}

TEST_CASE("a figure has a caption of its numbers") {
    const TempFolder folder;
    const Run run = run_here({"figure", "wheelbarrow", "--out", folder / "a.svg"});
    CHECK(run.status == 0);
    const std::string svg = content(folder / "a.svg");
    // 60 kg at 0.45 m and 12 kg at 0.50 m, hands at 1.4 m: (60 × 0.45 + 12 × 0.5) kg·m ×
    // 9.80665 m/s² ÷ 1.4 m = 231 N.
    CHECK_THAT(svg, ContainsSubstring("231"));
    CHECK_THAT(svg, ContainsSubstring("Second class"));
}

TEST_CASE("a body is drawn from any side and at any place of its path") {
    const TempFolder folder;
    for (const char* view : {"side", "front", "above", "oblique"}) {
        const std::string out = folder / (std::string(view) + ".svg");
        CHECK(run_here({"figure", "curl-dumbbell", "--view", view, "--out", out}).status == 0);
        CHECK_THAT(content(out), ContainsSubstring("elbow"));
    }
    CHECK(content(folder / "side.svg") != content(folder / "front.svg"));
    CHECK(content(folder / "side.svg") != content(folder / "above.svg"));
    const std::string start = folder / "start.svg";
    CHECK(run_here({"figure", "curl-dumbbell", "--at", "0", "--out", start}).status == 0);
    CHECK_THAT(content(start), ContainsSubstring("at 0 % of the way"));
    CHECK(run_here({"draw", "curl-dumbbell", "--out", folder / "a.png"}).status == 0);
    const std::string sweep = folder / "sweep.svg";
    CHECK(run_here({"figure", "curl-dumbbell", "--sweep", "--out", sweep}).status == 0);
    CHECK_THAT(content(sweep), ContainsSubstring("pull of the muscles of the elbow"));
    const std::string pair = folder / "pair.svg";
    CHECK(run_here({"figure", "crate-near", "--beside", "crate-far", "--out", pair}).status == 0);
    CHECK_THAT(content(pair), ContainsSubstring("more in B"));
    CHECK(run_here({"figure", "crate-near", "--beside", "wheelbarrow", "--out", pair}).status == 2);
    CHECK(run_here({"figure", "crate-near", "--beside", "no-such", "--out", pair}).status == 2);
}

TEST_CASE("what draw cannot do is status 2 for the command line and 1 for the disk") {
    const TempFolder folder;
    const std::string out = folder / "a.png";
    CHECK(run_here({"draw", "wheelbarrow"}).status == 2);
    CHECK(run_here({"draw", "no-such", "--out", out}).status == 2);
    CHECK(run_here({"draw", "wheelbarrow", "--out", folder / "a.gif"}).status == 2);
    for (const char* size : {"0x0", "-5x5", "640", "x", "640x", "640x360x2", "99999999x99999999",
                             "9999999999999x5", "nan"}) {
        INFO(size);
        CHECK(run_here({"draw", "wheelbarrow", "--out", out, "--size", size}).status == 2);
    }
    CHECK(run_here({"draw", "wheelbarrow", "--out", out, "--look", "sepia"}).status == 2);
    CHECK(run_here({"draw", "curl-dumbbell", "--out", out, "--view", "below"}).status == 2);
    CHECK(run_here({"draw", "curl-dumbbell", "--out", out, "--at", "101"}).status == 2);
    CHECK(run_here({"draw", "curl-dumbbell", "--out", out, "--at", "nan"}).status == 2);
    const Run lost = run_here({"draw", "wheelbarrow", "--out", folder / "no/such/a.png"});
    CHECK(lost.status == 1);
    CHECK_THAT(lost.err, ContainsSubstring("no/such/a.png"));
    CHECK(folder.count() == 0);
}

TEST_CASE(
    "a full disk or a forbidden folder is told for every kind of file, and no half file left") {
    const std::vector<std::vector<std::string>> works{
        {"draw", "wheelbarrow", "--out", "x.png"},
        {"figure", "wheelbarrow", "--out", "x.svg"},
        {"figure", "wheelbarrow", "--sweep", "--out", "x.pdf"},
        {"figure", "curl-dumbbell", "--sweep", "--out", "x.png"},
        {"figure", "crate-near", "--beside", "crate-far", "--out", "x.pdf"},
        {"export", "--format", "qti21", "--count", "3", "--out", "x.zip"},
        {"export", "--format", "qti3", "--count", "3", "--out", "x.zip"},
        {"export", "--format", "csv", "--count", "3", "--out", "x.csv"},
        {"export", "--format", "cards", "--count", "20", "--out", "x.csv"},
        {"handout", "--blueprint", "boathouse", "--out", "x"},
        {"handout", "--blueprint", "boathouse", "--html", "--out", "x"}};
    for (std::vector<std::string> work : works) {
        INFO(work.front() << " " << work[1] << " " << work.back());
        const std::string name = work.back();
        const TempFolder folder;
        work.back() = folder / name;
        {
            const SmallDisk disk(100);
            const Run full = run_here(work);
            CHECK(full.status == 1);
            CHECK_THAT(full.err, ContainsSubstring(folder.path()));
        }
        CHECK(folder.count() == 0);
        work.back() = "/proc/no-such-folder/" + name;
        const Run forbidden = run_here(work);
        CHECK(forbidden.status == 1);
        CHECK_THAT(forbidden.err, ContainsSubstring("/proc/no-such-folder"));
    }
}

TEST_CASE("levers are swept and compared") {
    const TempFolder folder;
    const std::string out = folder / "a.svg";
    CHECK(run_here({"figure", "crowbar", "--sweep", "--out", out}).status == 0);
    CHECK_THAT(content(out), ContainsSubstring("turn of the effort"));
    for (const char* over : {"direction", "effort-place", "load-place", "axis-place", "load"}) {
        INFO(over);
        CHECK(run_here({"figure", "seesaw", "--sweep", "--over", over, "--out", out, "--force"})
                  .status == 0);
        CHECK_THAT(content(out), ContainsSubstring("mechanical advantage"));
    }
    CHECK(run_here({"figure", "crowbar", "--beside", "nail-puller", "--out", out, "--force"})
              .status == 0);
    CHECK_THAT(content(out), ContainsSubstring("load torque"));
    CHECK(run_here({"figure", "crowbar", "--sweep", "--over", "colour", "--out", out}).status == 2);
    CHECK(run_here({"figure", "crowbar", "--over", "load", "--out", out}).status == 2);
    CHECK(run_here({"figure", "crowbar", "--beside", "no-such", "--out", out}).status == 2);
    const Run body = run_here({"figure", "curl-cable", "--sweep", "--over", "load", "--out", out});
    CHECK(body.status == 2);
    CHECK_THAT(body.err, ContainsSubstring("its own path"));
}

TEST_CASE("handout writes a sheet and a key for each version, named by their codes") {
    const TempFolder folder;
    const Run run = run_here({"handout", "--blueprint", "boathouse", "--seed", "42", "--versions",
                              "3", "--out", folder / "new folder"});
    INFO(run.err);
    REQUIRE(run.status == 0);
    for (const char* letter : {"A", "B", "C"}) {
        for (const char* kind : {"", "-key"}) {
            const std::string path =
                folder / ("new folder/boathouse-42-" + std::string(letter) + kind + ".pdf");
            INFO(path);
            CHECK(content(path).substr(0, 5) == "%PDF-");
            CHECK_THAT(run.out, ContainsSubstring(path));
        }
    }
}

TEST_CASE("a sheet's code makes that sheet again") {
    const TempFolder folder;
    REQUIRE(run_here({"handout", "--blueprint", "boathouse", "--seed", "9", "--versions", "3",
                      "--html", "--out", folder / "first"})
                .status == 0);
    REQUIRE(run_here({"handout", "--code", "boathouse-9-B", "--html", "--out", folder / "again"})
                .status == 0);
    CHECK(content(folder / "again/boathouse-9-B.html") ==
          content(folder / "first/boathouse-9-B.html"));
    CHECK(content(folder / "again/boathouse-9-B-key.html") ==
          content(folder / "first/boathouse-9-B-key.html"));
    CHECK_FALSE(fs::exists(folder / "again/boathouse-9-A.html"));
}

TEST_CASE("what handout cannot do is told, and no file is left") {
    const TempFolder folder;
    CHECK(run_here({"handout", "--out", folder.path()}).status == 2);
    CHECK(run_here({"handout", "--blueprint", "no-such", "--out", folder.path()}).status == 2);
    CHECK(run_here({"handout", "--code", "nonsense", "--out", folder.path()}).status == 2);
    CHECK(run_here(
              {"handout", "--blueprint", "boathouse", "--versions", "99", "--out", folder.path()})
              .status == 2);
    { std::ofstream(folder / "a file") << "in the way"; }
    CHECK(run_here({"handout", "--blueprint", "boathouse", "--out", folder / "a file"}).status ==
          1);
    CHECK(folder.count() == 1);
}

TEST_CASE("export writes packages and tables") {
    const TempFolder folder;
    for (const char* format : {"qti21", "qti3"}) {
        const std::string out = folder / (std::string(format) + ".zip");
        CHECK(run_here({"export", "--format", format, "--count", "5", "--out", out}).status == 0);
        CHECK(content(out).substr(0, 4) == "PK\x03\x04"); // PKWARE, local file header
    }
    CHECK(
        run_here({"export", "--format", "csv", "--count", "5", "--out", folder / "q.csv"}).status ==
        0);
    CHECK(content(folder / "q.csv").substr(0, 5) == "code,");
    CHECK(run_here({"export", "--format", "cards", "--count", "5", "--out", folder / "c.csv"})
              .status == 0);
    CHECK(content(folder / "c.csv").substr(0, 18) == "front,back,picture");
}

TEST_CASE("what needs a drawing goes out with it, or is left out and counted") {
    const TempFolder folder;
    for (const char* format : {"csv", "cards"}) {
        const auto exported = [&](const std::string& out) {
            return run_here({"export", "--format", format, "--skill", "moment-arm-oblique",
                             "--count", "10", "--out", out});
        };
        const Run alone = exported("-");
        CHECK(alone.status == 0);
        CHECK_THAT(alone.err, ContainsSubstring("need their drawing and were left out"));
        const std::string out = folder / (std::string(format) + ".zip");
        const Run packed = exported(out);
        CHECK(packed.status == 0);
        CHECK(packed.err.empty());
        CHECK(content(out).substr(0, 4) == "PK\x03\x04");
    }
}

TEST_CASE("nothing that is there is written over unasked") {
    const TempFolder folder;
    const std::vector<std::vector<std::string>> commands{
        {"draw", "wheelbarrow", "--out", folder / "a.svg"},
        {"figure", "wheelbarrow", "--out", folder / "b.svg"},
        {"draw", "curl-dumbbell", "--size", "64x48", "--out", folder / "c.gif"},
        {"draw", "curl-dumbbell", "--size", "64x48", "--out", folder / "frames/"},
        {"export", "--format", "csv", "--count", "2", "--out", folder / "d.csv"}};
    folder.put("frames/mine.txt", "mine");
    for (const char* name : {"a.svg", "b.svg", "c.gif", "d.csv"})
        folder.put(name, "mine");
    for (std::vector<std::string> command : commands) {
        INFO(command.back());
        const Run refused = run_here(command);
        CHECK(refused.status == 2);
        CHECK_THAT(refused.err, ContainsSubstring("--force"));
    }
    for (const char* name : {"a.svg", "b.svg", "c.gif", "d.csv", "frames/mine.txt"})
        CHECK(content(folder / name) == "mine");
    std::vector<std::string> command = commands.front();
    command.emplace_back("--force");
    CHECK(run_here(command).status == 0);
    CHECK(content(folder / "a.svg") != "mine");
    // A device is no file of anybody's.
    CHECK(run_here({"export", "--format", "csv", "--count", "2", "--out", "/dev/null"}).status ==
          0);
}

TEST_CASE("what export cannot do is told") {
    const TempFolder folder;
    const std::string out = folder / "x.zip";
    CHECK(run_here({"export", "--format", "docx", "--out", out}).status == 2);
    CHECK(run_here({"export", "--format", "csv", "--count", "0", "--out", out}).status == 2);
    CHECK(run_here({"export", "--format", "csv", "--skill", "juggling", "--out", out}).status == 2);
    CHECK(run_here({"export", "--format", "csv", "--out", folder / "no/such.csv"}).status == 1);
    CHECK(folder.count() == 0);
}

TEST_CASE("a package of thousands of questions holds each once") {
#ifdef STEELYARD_SANITIZED
    const std::string count = "500"; // every call is watched: ten thousand take five minutes
#else
    const std::string count = "10000";
#endif
    const TempFolder folder;
    const std::string out = folder / "many.zip";
    const Run run =
        run_here({"export", "--format", "qti21", "--count", count, "--seed", "7", "--out", out});
    INFO(run.err);
    CHECK(run.status == 0);
    // Python's own reader of archives: each item under a name of its own.
    const Ran counted = run_outside(
        "python3 -c 'import sys, zipfile; names = zipfile.ZipFile(sys.argv[1]).namelist(); "
        "print(len({n for n in names if n.startswith(\"items/\")}), len(names) == "
        "len(set(names)))' " +
        out);
    CHECK(counted.out == count + " True\n");
}

TEST_CASE("a bank of which a part cannot be read makes no paper, whatever makes it") {
    const TempFolder folder;
    const std::string bank = folder / "bank";
    fs::copy(fs::path(STEELYARD_SOURCE_DIR) / "question_bank", bank, fs::copy_options::recursive);
    const fs::path lost = fs::directory_iterator(bank + "/families")->path();
    std::ofstream(lost, std::ios::app) << "\n[[[\n";
    const std::vector<std::vector<std::string>> makers{
        {"handout", "--blueprint", "boathouse", "--out", folder / "a", "--bank", bank},
        {"export", "--format", "csv", "--out", folder / "b.csv", "--bank", bank},
        {"generate", "--count", "3", "--bank", bank}};
    for (const auto& maker : makers) {
        const Run run = run_here(maker);
        INFO(maker.front() << ": " << run.err);
        CHECK(run.status == 2);
        CHECK(run.out.empty());
        CHECK_THAT(run.err, ContainsSubstring(lost.filename().string()));
    }
    CHECK(folder.count() == 1);
}
