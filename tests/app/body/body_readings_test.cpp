#include "app/body/body_readings.h"
#include "app/body/sample_body.h"
#include "catch.h"
#include "mechanics/constants.h"
#include "words/body/body_words.h"

#include <algorithm>

using namespace steelyard;
using namespace steelyard::app;

namespace {

BodyModel model_of(const std::string& name) {
    return make_body(exercise_named(name), known_muscles());
}

const BodyRow& row(const BodyReadings& readings, words::BodyQuantity id) {
    const auto found = std::find_if(readings.rows.begin(), readings.rows.end(),
                                    [id](const BodyRow& one) { return one.id == id; });
    REQUIRE(found != readings.rows.end());
    return *found;
}

} // namespace

TEST_CASE("muscles are set beside the load on their own joint, not the other hand's too",
          "[body-readings]") {
    const BodyModel model = model_of("lateral-raise-straight");
    const BodyReadings readings = read_axes(model, setup::UnitSystem::si);
    REQUIRE(readings.pair);
    CHECK(readings.pair->load_N == Approx(5.0 * mechanics::kStandardGravity));
    CHECK(readings.pair->muscles_N == muscle_force(model).value());
}

TEST_CASE("the window names the rotation that the muscles must give, as the terminal does",
          "[body-readings]") {
    const BodyModel model = model_of("lateral-raise-bent");
    const BodyReadings readings = read_axes(model, setup::UnitSystem::si);
    const auto rotation = mechanics::Hinge::right_shoulder_rotation;
    const std::string asked(words::asked_of_muscles(rotation, model.solved.muscle(rotation)));
    CHECK(asked == "external rotation");
    CHECK(readings.sentence.find(asked) != std::string::npos);
    CHECK(readings.sentence.find("internal") == std::string::npos);
    for (const BodyBar& bar : readings.bars)
        CHECK(bar.name.find("internal") == std::string::npos);
}

TEST_CASE("headline and bars set both hips against the low back, the rows are of each hip",
          "[body-readings]") {
    const BodyReadings readings = read_axes(model_of("hinge-bar-near"), setup::UnitSystem::si);
    CHECK(readings.headline == "both hips");
    CHECK(readings.sentence.find("at the low back") != std::string::npos);
    CHECK(readings.bars[0].name == "both hips");
    CHECK(readings.bars[0].share == 1.0);
    CHECK(readings.bars[1].name == "low back");
    CHECK(readings.both_sides);
    CHECK(readings.at == "At each hip");
}

TEST_CASE("where the movers are not modelled the column says so and why, and shows no force",
          "[body-readings]") {
    const BodyReadings readings = read_axes(model_of("bench-press"), setup::UnitSystem::si);
    CHECK(row(readings, words::BodyQuantity::muscles).value == "not modelled");
    CHECK(row(readings, words::BodyQuantity::joint_reaction).value == "not known");
    CHECK(readings.why_no_force.find("pectoralis major") != std::string::npos);
    CHECK_FALSE(readings.pair);
}
