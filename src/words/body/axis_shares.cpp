#include "words/body/axis_shares.h"

#include "setup/units/format_quantity.h"
#include "words/body/body_words.h"
#include "words/letter_case.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::words {
namespace {

using mechanics::Hinge;

/// The other side counts from this part of the shown one's torque on: below, the exercise is of one
/// side.
constexpr double kIdlePart = 0.02;
/// Sides that differ by less than this part are told as alike.
constexpr double kAlikePart = 0.05;

bool is_paired(Hinge hinge) {
    return mechanics::hinge_info(hinge).mirror != hinge;
}

bool has(const std::vector<Hinge>& axes, Hinge hinge) {
    return std::find(axes.begin(), axes.end(), hinge) != axes.end();
}

/// Whether a paired joint would be set against one of the middle.
bool stands_among_single(const std::vector<Hinge>& axes, Hinge axis) {
    return is_paired(axis) && !has(axes, mechanics::hinge_info(axis).mirror) &&
           !std::all_of(axes.begin(), axes.end(), is_paired);
}

} // namespace

std::vector<AxisShare> axis_shares(const std::vector<Hinge>& axes,
                                   const mechanics::BodyResult& result) {
    std::vector<AxisShare> shares;
    for (const Hinge axis : axes) {
        const std::string word = axis_word(axes, axis);
        const double one_Nm = std::abs(result.muscle(axis));
        AxisShare share{axis, false, one_Nm, one_Nm, word, word};
        const double other_Nm = std::abs(result.muscle(mechanics::hinge_info(axis).mirror));
        const double larger_Nm = std::max(share.torque_Nm, other_Nm);
        if (stands_among_single(axes, axis) && other_Nm > kIdlePart * larger_Nm) {
            const std::string joint = joint_word(axis);
            const std::string movement = word.substr(joint.size()); // " abduction" or nothing
            const bool alike = std::abs(share.torque_Nm - other_Nm) < kAlikePart * larger_Nm;
            const auto& label = mechanics::joint_info(mechanics::hinge_info(axis).joint).label;
            share.both = true;
            share.name = both_sides_word(axis) + movement;
            share.one = alike ? "each " + word : std::string(label) + movement;
            share.torque_Nm += other_Nm;
        }
        shares.push_back(std::move(share));
    }
    return shares;
}

std::string shares_sentence(const std::vector<AxisShare>& shares, setup::UnitSystem units) {
    if (shares.size() < 2)
        return "";
    const auto text = [&](double torque_Nm) {
        return setup::format_quantity(torque_Nm, setup::Dimension::torque, units);
    };
    std::string sentence;
    for (const AxisShare& share : shares) {
        sentence +=
            fmt::format("{}{} {}", sentence.empty() ? "" : ", ", share.name, text(share.torque_Nm));
        if (share.both)
            sentence += fmt::format(" ({} {})", text(share.one_Nm), share.one);
    }
    return capitalised(sentence) + '.';
}

std::size_t most_loaded(const std::vector<AxisShare>& shares) {
    const auto most = std::max_element(shares.begin(), shares.end(),
                                       [](const AxisShare& one, const AxisShare& other) {
                                           return one.torque_Nm < other.torque_Nm;
                                       });
    return static_cast<std::size_t>(most - shares.begin());
}

std::vector<std::size_t> as_loaded(const std::vector<AxisShare>& shares, std::size_t as) {
    constexpr double kEqualPart = 0.005;
    std::vector<std::size_t> equal;
    for (std::size_t i = 0; i < shares.size(); ++i)
        if (i != as && shares[i].torque_Nm > (1.0 - kEqualPart) * shares[as].torque_Nm)
            equal.push_back(i);
    return equal;
}

std::string both_sides_word(Hinge hinge) {
    const std::string joint = joint_word(hinge);
    return joint == "ball of foot" ? "both balls of the feet" : fmt::format("both {}s", joint);
}

std::string one_side_word(const std::vector<Hinge>& axes, Hinge axis) {
    const std::string word = axis_word(axes, axis);
    return stands_among_single(axes, axis) ? "one " + word : word;
}

} // namespace steelyard::words
