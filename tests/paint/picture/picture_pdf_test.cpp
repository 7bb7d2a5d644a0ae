#include "catch.h"
#include "outside_program.h"
#include "paint/picture/picture_pdf.h"
#include "publish/pictures/sample_drawing.h"
#include "temp_folder.h"

using namespace steelyard;

TEST_CASE("a picture as PDF is one figure that says what it shows") {
    scene::Drawing drawing = sample_drawing();
    drawing.title = "Crowbar";
    drawing.description = "A rack foot is lifted.";
    const auto pdf = paint::picture_pdf(drawing, scene::Look::print, {640, 360});
    REQUIRE(pdf);
    if (!has_program("qpdf")) {
        WARN("skipped: there is no qpdf here");
        return;
    }
    const TempFile file("picture.pdf", *pdf);
    const Ran structure = run_outside(
        "python3 " STEELYARD_SOURCE_DIR "/tests/paint/paper/pdf_structure.py " + file.path());
    CHECK(structure.out == "1 figures\n");
    const Ran plain = run_outside("qpdf --qdf --object-streams=disable " + file.path() + " -");
    CHECK_THAT(plain.out, ContainsSubstring("/Alt (Crowbar. A rack foot is lifted.)"));
    CHECK(run_outside("qpdf --check " + file.path()).status == 0);
}
