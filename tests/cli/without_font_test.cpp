// The real program on a machine without fonts, or without its own.

#include "catch.h"
#include "outside_program.h"
#include "temp_folder.h"

namespace {

/// Starts the program with the fonts of one folder only (fonts.conf(5)).
std::string program_with_fonts(const TempFolder& folder, const std::string& fonts) {
    const std::string config = folder.put(
        "fonts.conf", "<?xml version=\"1.0\"?>\n<fontconfig><dir>" + fonts + "</dir><cachedir>" +
                          folder / "cache" + "</cachedir></fontconfig>\n");
    return "FONTCONFIG_FILE=" + config + " " + std::string(STEELYARD_PROGRAM) + " ";
}

} // namespace

TEST_CASE("without a font everything that is painted is refused with what to install") {
    const TempFolder folder;
    const std::string program = program_with_fonts(folder, folder / "fonts");
    for (const std::string& work : {"handout --blueprint boathouse --out " + folder / "sheets",
                                    "figure wheelbarrow --out " + folder / "a.pdf",
                                    "figure wheelbarrow --out " + folder / "a.png",
                                    "draw curl-dumbbell --out " + folder / "b.png",
                                    "figure crowbar --sweep --out " + folder / "c.pdf"}) {
        INFO(work);
        const Ran ran = run_outside(program + work);
        CHECK(ran.status == 1);
        CHECK_THAT(ran.out, ContainsSubstring("fonts-inter"));
    }
    // What a reader's own program sets needs no font here.
    CHECK(run_outside(program + "figure wheelbarrow --out " + folder / "a.svg").status == 0);
    CHECK(run_outside(program + "handout --html --blueprint boathouse --out " + folder / "pages")
              .status == 0);
    CHECK(folder.count() <= 4); // the configuration, its cache, the drawing and the pages
    CHECK_FALSE(std::filesystem::exists(folder / "sheets"));
    CHECK_FALSE(std::filesystem::exists(folder / "a.pdf"));
    CHECK_FALSE(std::filesystem::exists(folder / "a.png"));
}

TEST_CASE("with another font pictures are painted, and no paper that would break elsewhere") {
    const std::string other = "/usr/share/fonts/truetype/dejavu";
    if (!std::filesystem::is_directory(other)) {
        WARN("skipped: the package fonts-dejavu-core is not installed");
        return;
    }
    const TempFolder folder;
    const std::string program = program_with_fonts(folder, other);
    CHECK(run_outside(program + "figure wheelbarrow --out " + folder / "a.png").status == 0);
    const Ran ran = run_outside(program + "handout --blueprint boathouse --out " + folder / "new");
    CHECK(ran.status == 1);
    CHECK_THAT(ran.out, ContainsSubstring("Inter"));
    CHECK_THAT(ran.out, ContainsSubstring("fonts-inter"));
    CHECK_FALSE(std::filesystem::exists(folder / "new"));
}
