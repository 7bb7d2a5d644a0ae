#include "setup/muscle/muscle_arms.h"

#include "setup/muscle/muscle_file.h"

#include <algorithm>
#include <array>

namespace steelyard::setup {
namespace {

using mechanics::ArmPolynomial;
using mechanics::ArmSource;
using mechanics::ArmTable;

/// Pure numbers of an array.
std::vector<double> read_numbers(TomlReader& table, std::string_view key) {
    std::vector<double> numbers;
    const TomlNode* node = table.node(key);
    const auto* array = node ? std::get_if<TomlArray>(&node->value) : nullptr;
    if (!array) {
        if (node)
            table.add_error(key, describe(*node), "an array of numbers");
        return numbers;
    }
    for (std::size_t i = 0; i < array->items.size(); ++i) {
        const std::string place = table.path_of(key) + "[" + std::to_string(i + 1) + "]";
        if (const auto number = table.quantity_of(array->items[i], place, Dimension::number))
            numbers.push_back(number->value_SI);
    }
    return numbers;
}

/// A printed polynomial: arm in `arm_unit` over the angle in `angle_unit`.
ArmPolynomial read_polynomial(TomlReader& table) {
    static const std::vector<std::string_view> kArmUnits{"mm", "cm", "m"};
    static const std::vector<std::string_view> kAngleUnits{"deg", "rad"};
    ArmPolynomial polynomial;
    polynomial.coefficients = read_numbers(table, "polynomial");
    polynomial.valid_rad = read_angles(table, "valid");
    const auto arm_unit = table.choice("arm_unit", kArmUnits, Need::required);
    const auto angle_unit = table.choice("angle_unit", kAngleUnits, Need::required);
    if (!arm_unit || !angle_unit)
        return polynomial;
    const double per_metre = std::array{1000.0, 100.0, 1.0}[*arm_unit];
    const double per_radian = *angle_unit == 0 ? 180.0 / mechanics::kPi : 1.0;
    double power = 1.0;
    for (double& coefficient : polynomial.coefficients) {
        coefficient *= power / per_metre;
        power *= per_radian;
    }
    return polynomial;
}

ArmTable read_table(TomlReader& table) {
    ArmTable arms;
    if (table.has("constant")) {
        const auto constant = table.quantity("constant", Dimension::length);
        arms.knots = {{0.0, constant ? constant->value_SI : 0.0}};
        return arms;
    }
    for (TomlReader& row : table.tables("table", Need::required)) {
        const auto angle = row.quantity("angle", Dimension::angle, Need::required);
        const auto arm = row.quantity("arm", Dimension::length, Need::required);
        if (angle && arm)
            arms.knots.push_back({angle->value_SI, arm->value_SI});
        row.finish();
    }
    return arms;
}

/// Turns a curve whose angle or arm counts the other way into the hinge's own senses.
void turn_into_hinge_sense(ArmPolynomial& polynomial, double arm_sign, double angle_sign) {
    double sign = arm_sign;
    for (double& coefficient : polynomial.coefficients) {
        coefficient *= sign;
        sign *= angle_sign;
    }
    if (angle_sign < 0.0)
        polynomial.valid_rad = {-polynomial.valid_rad.high, -polynomial.valid_rad.low};
}

void turn_into_hinge_sense(ArmTable& table, double arm_sign, double angle_sign) {
    for (mechanics::ArmKnot& knot : table.knots)
        knot = {angle_sign * knot.angle_rad, arm_sign * knot.arm_m};
    if (angle_sign < 0.0)
        std::reverse(table.knots.begin(), table.knots.end());
}

/// What the arms rest on. What is from memory is illustrative and nothing else.
mechanics::Basis read_basis(TomlReader& table, const mechanics::Citation& citation) {
    const auto choice = table.choice("basis", basis_names(), Need::required);
    const auto basis = choice ? static_cast<mechanics::Basis>(*choice) : mechanics::Basis{};
    if (choice && citation.mark == mechanics::Evidence::memory &&
        basis != mechanics::Basis::illustrative)
        table.add_error("basis", "\"" + std::string(basis_name(basis)) + "\" from memory",
                        "\"illustrative\" beside the mark \"memory\"");
    return basis;
}

} // namespace

ArmSource read_arm_source(TomlReader& table, const TurnWords& words) {
    ArmSource source;
    source.citation = read_citation(table);
    if (table.has("polynomial"))
        source.curve = read_polynomial(table);
    else
        source.curve = read_table(table);
    const double arm_sign = read_sign(table, "positive", words, Need::required).value_or(1.0);
    const double angle_sign = read_sign(table, "angle", words, Need::optional).value_or(1.0);
    std::visit([&](auto& curve) { turn_into_hinge_sense(curve, arm_sign, angle_sign); },
               source.curve);
    source.basis = read_basis(table, source.citation);
    source.holds = read_pose_ranges(table, "holds");
    if (const auto spread = table.quantity("spread", Dimension::length))
        source.spread_m = spread->value_SI;
    table.finish();
    return source;
}

} // namespace steelyard::setup
