#include "catch.h"
#include "setup/body/segment_table_file.h"

#include <fstream>
#include <iterator>
#include <string>

using namespace steelyard::setup;
namespace mechanics = steelyard::mechanics;

namespace {

const std::string kFolder = std::string(STEELYARD_SOURCE_DIR) + "/assets/body";

mechanics::SegmentTable shipped(const std::string& id) {
    const auto tables = read_segment_tables(kFolder);
    INFO((tables ? std::string() : to_text(tables.error())));
    REQUIRE(tables.has_value());
    for (const NamedSegmentTable& named : *tables)
        if (named.id == id)
            return named.table;
    FAIL("no table " << id);
    return {};
}

/// Body mass as the table divides it: head, trunk, and the limbs twice.
double sum_of_masses(const mechanics::SegmentColumn& column) {
    double trunk = 0.0;
    for (const mechanics::SegmentRow& slice : column.trunk)
        trunk += slice.mass_fraction;
    return column.head.mass_fraction + trunk +
           2.0 * (column.upper_arm.mass_fraction + column.forearm.mass_fraction +
                  column.hand.mass_fraction + column.thigh.mass_fraction +
                  column.shank.mass_fraction + column.foot.mass_fraction);
}

std::string file_text(const std::string& name) {
    std::ifstream stream(kFolder + "/" + name);
    return {std::istreambuf_iterator<char>(stream), {}};
}

InputError broken(const std::string& piece, const std::string& by) {
    std::string text = file_text("de_leva_1996.toml");
    const std::size_t at = text.find(piece);
    REQUIRE(at != std::string::npos);
    text.replace(at, piece.size(), by);
    const auto table = parse_segment_table(text, "t.toml");
    REQUIRE_FALSE(table.has_value());
    INFO(to_text(table.error()));
    CHECK(table.error().line > 0);
    return table.error();
}

} // namespace

TEST_CASE("the shipped segment tables divide the whole body", "[body][oracle]") {
    // Sums of the printed rows: de Leva 1996, Table 4: 100.00 % for men, 99.99 % for women (the
    // rows are printed to 0.01 %); Winter, Table 4.1: 1.000.
    CHECK_THAT(sum_of_masses(shipped("de_leva_1996").male), WithinAbs(1.0000, 5e-5));
    CHECK_THAT(sum_of_masses(shipped("de_leva_1996").female), WithinAbs(0.9999, 5e-5));
    CHECK_THAT(sum_of_masses(shipped("winter_dempster").male), WithinAbs(1.000, 5e-4));
}

TEST_CASE("the shipped segment tables hold the published rows", "[body][oracle]") {
    const auto leva = shipped("de_leva_1996");
    // de Leva 1996, Table 4: forearm of men 268.9 mm, 1.62 %, centre 45.74 %, radii 27.6 %
    // sagittal, 26.5 % transverse, 12.1 % longitudinal.
    CHECK(leva.male.forearm.length_m == 0.2689);
    CHECK(leva.male.forearm.mass_fraction == Approx(0.0162).epsilon(1e-12));
    CHECK(leva.male.forearm.com_fraction == Approx(0.4574).epsilon(1e-12));
    CHECK(leva.male.forearm.gyration.isApprox(mechanics::Vec3(0.276, 0.121, 0.265), 1e-12));
    CHECK(leva.female.trunk.size() == 3);
    CHECK(leva.female.reference_height_m == 1.735);
    // The foot's long axis points forward: x longitudinal, y sagittal, z transverse.
    CHECK(leva.male.foot.gyration.isApprox(mechanics::Vec3(0.124, 0.257, 0.245), 1e-12));

    // Winter, Table 4.1: thigh 0.100 of body mass, centre 0.433, radius 0.323; Drillis & Contini
    // 1966: 0.245 of stature. 0.245 + 0.246 + 0.039 = 0.530, the height of the hip.
    const auto winter = shipped("winter_dempster");
    CHECK(winter.male.thigh.mass_fraction == 0.1);
    CHECK(winter.male.thigh.com_fraction == 0.433);
    CHECK(winter.male.thigh.gyration.x() == 0.323);
    CHECK(winter.male.reference_height_m == 1.0);
    CHECK(winter.male.thigh.length_m + winter.male.shank.length_m + winter.male.ankle_height_m ==
          Approx(0.530).epsilon(1e-12));
    CHECK_FALSE(winter.source.empty());
}

TEST_CASE("errors of a segment table point at the line", "[body]") {
    CHECK(broken("length = \"264.3 mm\"", "length = \"264.3 kg\"").key == "female.forearm.length");
    CHECK(broken("mass = \"1.38 %\"", "mass = \"a lot\"").key == "female.forearm.mass");
    CHECK(broken("[female.hand]", "[female.hnad]").key == "female.hnad");
    CHECK(broken("sagittal", "sagital").key.find("gyration") != std::string::npos);
    CHECK(broken("source =", "sauce =").key == "sauce");
    CHECK_FALSE(read_segment_tables("no/such/folder").has_value());
}
