// The real program on a machine without any font.

#include "catch.h"
#include "outside_program.h"
#include "temp_folder.h"

TEST_CASE("without a font everything that is painted is refused with what to install") {
    const TempFolder folder;
    // Fontconfig that looks in an empty folder only (fonts.conf(5)).
    const std::string config = folder.put(
        "fonts.conf", "<?xml version=\"1.0\"?>\n<fontconfig><dir>" + folder / "fonts" +
                          "</dir><cachedir>" + folder / "cache" + "</cachedir></fontconfig>\n");
    const std::string program =
        "FONTCONFIG_FILE=" + config + " " + std::string(STEELYARD_PROGRAM) + " ";
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
