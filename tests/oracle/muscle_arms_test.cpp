// The moment arms that come with the program against their published numbers, and the interpolation
// against an independent library.

#include "catch.h"
#include "mechanics/muscle/moment_arm_curve.h"
#include "setup/files/data_folder.h"
#include "setup/muscle/muscle_file.h"

#include <array>
#include <cmath>
#include <random>
#include <string>

// The pchip of Boost 1.74 calls isnan without std::, so <math.h> must stand before it.
// clang-format off
#include <math.h>
#include <boost/math/interpolators/pchip.hpp>
// clang-format on

using namespace steelyard;
using namespace steelyard::mechanics;

namespace {

double deg(double degrees) {
    return degrees * kPi / 180.0;
}

std::vector<ArmSource> arms_of(const std::string& file, const std::string& name,
                               const std::string& group) {
    const auto muscles =
        setup::read_muscle_file(setup::data_folder() / "assets/muscles" / (file + ".toml"));
    if (!muscles)
        FAIL(to_text(muscles.error()));
    for (const Muscle& muscle : *muscles)
        if (muscle.name == name && muscle.group == group)
            return muscle.arms;
    FAIL("no muscle " << name);
    return {};
}

const ArmSource& by_source(const std::vector<ArmSource>& arms, const std::string& author) {
    for (const ArmSource& source : arms)
        if (source.citation.text.find(author) != std::string::npos)
            return source;
    FAIL("no source " << author);
    return arms.front();
}

double arm_mm(const ArmSource& source, double angle_deg) {
    return 1000.0 * arm_by_source(source, deg(angle_deg));
}

} // namespace

// Pigeon, Yahia & Feldman 1996, J Biomech 29:1365: arms [mm] from the printed polynomials, to
// the hundredth that the table of values gives.
TEST_CASE("the elbow's arms are those of Pigeon, Yahia and Feldman 1996", "[oracle][muscle]") {
    constexpr std::array kAngles_deg{0.0, 30.0, 45.0, 60.0, 90.0, 120.0, 140.0};
    struct Row {
        const char* muscle;
        const char* group;
        std::array<double, 7> arms_mm;
    };
    const std::array<Row, 5> rows{{
        {"biceps", "elbow flexors", {14.66, 29.07, 35.99, 41.90, 48.28, 43.40, 31.48}},
        {"brachialis", "elbow flexors", {5.55, 14.03, 18.81, 23.40, 30.33, 31.50, 27.44}},
        {"brachioradialis", "elbow flexors", {19.49, 31.81, 41.48, 51.72, 68.67, 72.10, 61.66}},
        {"triceps", "elbow extensors", {-23.29, -24.94, -23.42, -21.83, -19.00, -16.18, -16.11}},
        {"anconeus", "elbow extensors", {-5.34, -7.70, -7.83, -8.24, -9.65, -10.27, -10.78}},
    }};
    for (const Row& row : rows) {
        const auto arms = arms_of("elbow", row.muscle, row.group);
        for (std::size_t i = 0; i < kAngles_deg.size(); ++i) {
            INFO(row.muscle << " at " << kAngles_deg[i]);
            CHECK_THAT(1000.0 * arm_at(arms, deg(kAngles_deg[i])).arm_m,
                       WithinAbs(row.arms_mm[i], 0.0051));
        }
    }
}

// The paper's own length polynomial of the brachioradialis has 11.374e-7 where the arm has
// 6.5171e-5, and the two differ by the factor π/180 between degrees and radians; the digits of the
// transcription with 5.6171e-5 do not fit it.
TEST_CASE("the brachioradialis has the digits that its length polynomial supports",
          "[oracle][muscle]") {
    const auto arms = arms_of("elbow", "brachioradialis", "elbow flexors");
    const auto& polynomial = std::get<ArmPolynomial>(arms.front().curve);
    const double per_degree_cubed = polynomial.coefficients[3] * std::pow(kPi / 180.0, 3) * 1000.0;
    CHECK_THAT(per_degree_cubed * kPi / 180.0, WithinRel(-11.374e-7, 1e-4)); // five digits printed
}

TEST_CASE("past its valid range the biceps' arm stays where the paper leaves it",
          "[oracle][muscle]") {
    const auto arms = arms_of("elbow", "biceps", "elbow flexors");
    CHECK(arm_at(arms, deg(168.0)).arm_m == arm_at(arms, deg(140.0)).arm_m);
    CHECK(arm_at(arms, deg(150.0)).clamped);
    CHECK_FALSE(arm_at(arms, deg(139.0)).clamped);
}

// Sugisaki et al. 2010, J Biomech 43:2844: triceps 17.4 ± 1.3 mm at 110°, 23.9 ± 1.4 mm at 30°.
TEST_CASE("the triceps' arms lie within one deviation of those measured in 2010",
          "[oracle][muscle]") {
    const auto arms = arms_of("elbow", "triceps", "elbow extensors");
    CHECK_THAT(-arm_mm(by_source(arms, "Pigeon"), 110.0), WithinAbs(17.4, 1.3));
    CHECK_THAT(-arm_mm(by_source(arms, "Pigeon"), 30.0), WithinAbs(23.9, 1.4));
}

// Ramsay, Hunter & Gonzalez 2009: triceps -24.5, -26.9, -25.6, -22.2, -18.2 mm and
// brachialis 16.2, 13.6, 18.9, 26.9, 31.9 mm at 0, 30, 60, 90, 120°.
TEST_CASE("the elbow's second opinions are those of Ramsay and others 2009", "[oracle][muscle]") {
    constexpr std::array kAngles_deg{0.0, 30.0, 60.0, 90.0, 120.0};
    constexpr std::array kTriceps_mm{-24.5, -26.9, -25.6, -22.2, -18.2};
    constexpr std::array kBrachialis_mm{16.2, 13.6, 18.9, 26.9, 31.9};
    const auto triceps_arms = arms_of("elbow", "triceps", "elbow extensors");
    const auto brachialis_arms = arms_of("elbow", "brachialis", "elbow flexors");
    for (std::size_t i = 0; i < kAngles_deg.size(); ++i) {
        CHECK_THAT(arm_mm(by_source(triceps_arms, "Ramsay"), kAngles_deg[i]),
                   WithinAbs(kTriceps_mm[i], 0.051));
        CHECK_THAT(arm_mm(by_source(brachialis_arms, "Ramsay"), kAngles_deg[i]),
                   WithinAbs(kBrachialis_mm[i], 0.051));
    }
}

// Bulgarian Academy of Sciences page: 47.1, 27.8, 54.4, -19.2 mm at 90°; biceps about 20 and
// brachialis about 16 mm near extension, where Pigeon has 15 and 6.
TEST_CASE("sources that disagree are all kept, and the range spans them", "[oracle][muscle]") {
    const auto at_90 = [](const char* muscle, const char* group) {
        return arm_mm(by_source(arms_of("elbow", muscle, group), "Bulgarian"), 90.0);
    };
    CHECK_THAT(at_90("biceps", "elbow flexors"), WithinAbs(47.1, 0.051));
    CHECK_THAT(at_90("brachialis", "elbow flexors"), WithinAbs(27.8, 0.051));
    CHECK_THAT(at_90("brachioradialis", "elbow flexors"), WithinAbs(54.4, 0.051));
    CHECK_THAT(at_90("triceps", "elbow extensors"), WithinAbs(-19.2, 0.051));
    const ArmReading near_extension = arm_at(arms_of("elbow", "biceps", "elbow flexors"), 0.0);
    CHECK_THAT(1000.0 * near_extension.range_m.low, WithinAbs(14.66, 0.005));
    CHECK_THAT(1000.0 * near_extension.range_m.high, WithinAbs(19.63, 0.005)); // 1.963 cm
}

// Achilles tendon: 35 to 37 mm by tendon excursion and hybrid methods (Manal et al. 2013, Fath
// 2010), 50 to 57 mm by centre of rotation (Rugg et al. 1990, Fath 2010): the range must hold both.
TEST_CASE("the calf's arm is a range, because the methods disagree", "[oracle][muscle]") {
    const auto arms = arms_of("ankle", "calf", "plantar flexors");
    for (const double plantar_deg : {-10.0, 0.0, 10.0}) {
        const ArmReading reading = arm_at(arms, deg(-plantar_deg)); // the hinge counts dorsiflexion
        CHECK(reading.range_m.high <= -0.0328); // 34.6 - 1.8 mm, as plantar flexors negative
        CHECK(reading.range_m.high >= -0.0362);
        CHECK_THAT(reading.range_m.low, WithinAbs(-0.057, 1e-6));
        CHECK(reading.arm_m > reading.range_m.low);
        CHECK(reading.arm_m < reading.range_m.high);
    }
    // Maganaris et al. 2000: 43 mm at 15° of dorsiflexion, 56 mm at 30° of plantar flexion.
    CHECK_THAT(arm_at(arms, deg(15.0)).arm_m, WithinAbs(-0.043, 1e-12));
    CHECK_THAT(arm_at(arms, deg(-30.0)).arm_m, WithinAbs(-0.056, 1e-12));
}

// Arch Bone Jt Surg, article 16466: 42.55, 39.91, 37.73, 36.18 mm at 0, 20, 40, 60°. Band of the
// literature 2 to 6 cm.
TEST_CASE("the patellar tendon's arm falls through its table without a bump", "[oracle][muscle]") {
    const auto arms = arms_of("knee", "quadriceps", "knee extensors");
    const ArmSource table = by_source(arms, "16466");
    constexpr std::array kArms_mm{42.55, 39.91, 37.73, 36.18};
    for (std::size_t i = 0; i < kArms_mm.size(); ++i)
        CHECK_THAT(-arm_mm(table, 20.0 * static_cast<double>(i)), WithinAbs(kArms_mm[i], 1e-9));
    for (double angle = 0.5; angle <= 60.0; angle += 0.5)
        CHECK(-arm_mm(table, angle) < -arm_mm(table, angle - 0.5));
    for (double angle = 0.0; angle <= 60.0; angle += 5.0) {
        const ArmReading reading = arm_at(arms, deg(angle));
        CHECK(reading.range_m.high < -0.02);
        CHECK(reading.range_m.low > -0.06);
    }
}

// Open model of the lumbar spine, Christophy et al. 2012: mean of the fascicles 41 mm. 5 cm (usual
// simplification, Güngör 2013) to 8 cm (College Physics 2e, Example 9.5).
TEST_CASE("the lumbar extensors' arm is the range from 4 to 8 cm", "[oracle][muscle]") {
    const ArmReading reading =
        arm_at(arms_of("lumbar", "lumbar extensors", "lumbar extensors"), deg(40.0));
    CHECK_THAT(reading.range_m.low, WithinAbs(-0.08, 1e-12));
    CHECK_THAT(reading.range_m.high, WithinAbs(-0.041, 1e-12));
}

// Maganaris 2000, J Biomech 33:375, abstract: about 4.5 cm dorsiflexed to 2.9 cm plantarflexed.
// Rugg et al. 1990 saw it fall by about 30 % over the range.
TEST_CASE("the tibialis anterior's arm is the measured one and falls with plantarflexion",
          "[oracle][muscle]") {
    const auto arms = arms_of("ankle", "tibialis anterior", "dorsiflexors");
    CHECK(arms.front().basis == Basis::measured);
    CHECK_THAT(arm_mm(arms.front(), 15.0), WithinAbs(45.0, 1e-9)); // dorsiflexion counts up
    CHECK_THAT(arm_mm(arms.front(), -30.0), WithinAbs(29.0, 1e-9));
    const double falls = 1.0 - arm_mm(arms.front(), -30.0) / arm_mm(arms.front(), 15.0);
    CHECK_THAT(falls, WithinAbs(0.33, 0.05));
}

// Rajagopal et al. 2016, arms of the model's parts at 0 and 90 degrees of hip flexion: long head of
// the biceps femoris 49 and 40, semimembranosus 43 and 35, semitendinosus 48 and 46 mm; weighted
// with 11.3, 18.4 and 4.8 cm² (Ward et al. 2009) 45.7 and 38.2 mm.
TEST_CASE("the hamstrings' arm at the hip is the model's, weighted by cross-section",
          "[oracle][muscle]") {
    const auto arms = arms_of("hip", "hamstrings", "hip extensors");
    CHECK(arms.front().basis == Basis::open_model);
    CHECK_THAT(-arm_mm(arms.front(), 0.0), WithinAbs(45.7, 0.5)); // the file has whole millimetres
    CHECK_THAT(-arm_mm(arms.front(), 90.0), WithinAbs(38.2, 0.5));
}

// Hik & Ackland 2019, J Anat 234:1, abstract: pectoralis major, latissimus and teres major have the
// largest depressor arms; the cuff has the largest arms of rotation. Kuechle et al. 1997, J
// Shoulder Elbow Surg 6:429, abstract: the pectoralis major has the largest arm in horizontal
// flexion, the posterior deltoid and the infraspinatus in horizontal extension.
TEST_CASE("the shoulder's arms keep the order that the reviews give", "[oracle][muscle]") {
    const auto muscles =
        setup::read_muscle_file(setup::data_folder() / "assets/muscles/shoulder.toml");
    REQUIRE(muscles);
    const auto arm_of = [&](const char* name, Hinge hinge, const Pose& pose) {
        for (const Muscle& muscle : *muscles)
            if (muscle.name == name && muscle.hinge == hinge)
                if (const auto reading = arm_in_pose(muscle.arms, pose[hinge], {pose, false}))
                    return 1000.0 * reading->arm_m;
        return 0.0;
    };
    const Hinge abduction = Hinge::right_shoulder_abduction;
    Pose out;
    out[abduction] = deg(90.0);
    for (const char* depressor : {"sternal pectoralis", "latissimus dorsi", "teres major"})
        CHECK(arm_of(depressor, abduction, out) < arm_of("posterior deltoid", abduction, out));
    Pose forward;
    forward[Hinge::right_shoulder_flexion] = deg(90.0);
    CHECK(arm_of("sternal pectoralis", abduction, forward) <
          arm_of("anterior deltoid", abduction, forward));
    CHECK(arm_of("posterior deltoid", abduction, forward) >
          arm_of("infraspinatus", abduction, forward));
    CHECK(arm_of("infraspinatus", abduction, forward) > 0.0);
    const Hinge rotation = Hinge::right_shoulder_rotation;
    for (const char* large : {"pectoralis major", "latissimus dorsi", "teres major"})
        CHECK(arm_of("subscapularis", rotation, Pose{}) > arm_of(large, rotation, Pose{}));
}

TEST_CASE("an arm of one plane is not used in another", "[oracle][muscle]") {
    const auto muscles =
        setup::read_muscle_file(setup::data_folder() / "assets/muscles/shoulder.toml");
    REQUIRE(muscles);
    Pose between; // raised half way between the front and the side
    between[Hinge::right_shoulder_flexion] = deg(40.0);
    between[Hinge::right_shoulder_abduction] = deg(60.0);
    for (const Muscle& muscle : *muscles)
        if (muscle.hinge != Hinge::right_shoulder_rotation && muscle.is_known()) {
            INFO(muscle.name << " of " << hinge_info(*muscle.hinge).name);
            CHECK_FALSE(arm_is_known(muscle, {between, false}));
        }
}

// Boost.Math's pchip is the same construction by other hands. It wants four knots or more, and
// takes one-sided slopes at the ends (given here: our ends), so the comparison runs between the
// second and the last knot but one.
TEST_CASE("the interpolation between knots is Boost.Math's monotone cubic", "[oracle][muscle]") {
    std::mt19937 engine(20240501);
    const auto uniform = [&engine](double low, double high) {
        return low + (high - low) * static_cast<double>(engine()) / 4294967296.0;
    };
    for (int round = 0; round < 500; ++round) {
        std::vector<double> angles, arms;
        ArmTable table;
        double angle = uniform(-1.0, 0.0);
        for (int i = 0; i < 6; ++i) {
            angle += uniform(0.05, 0.6);
            angles.push_back(angle);
            arms.push_back(uniform(-0.08, 0.08));
            table.knots.push_back({angles.back(), arms.back()});
        }
        const double from = angles[1], to = angles[4];
        boost::math::interpolators::pchip<std::vector<double>> theirs(std::move(angles),
                                                                      std::move(arms));
        const ArmSource ours{table, 0.0, {}};
        for (int i = 0; i <= 40; ++i) {
            const double at = from + (to - from) * i / 40.0;
            CHECK_THAT(arm_by_source(ours, at), WithinAbs(theirs(at), 1e-14)); // arms up to 0.08
        }
    }
}
