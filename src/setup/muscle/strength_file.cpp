#include "setup/muscle/strength_file.h"

#include "setup/muscle/muscle_words.h"

namespace steelyard::setup {
namespace {

using mechanics::MeasuredStrength;

mechanics::StrengthCurve read_curve(TomlReader& table) {
    mechanics::StrengthCurve curve;
    curve.c1 = table.number("c1", Need::required).value_or(0.0);
    curve.c1_sd = table.number("c1_sd").value_or(0.0);
    curve.c2 = table.number("c2", Need::required).value_or(1.0);
    if (const auto c3 = table.quantity("c3", Dimension::angle, Need::required))
        curve.c3_rad = c3->value_SI;
    if (!(curve.c1 > 0.0))
        table.add_error("c1", "nothing above 0", "a number above 0");
    return curve;
}

mechanics::StrengthAt read_torque(TomlReader& table) {
    mechanics::StrengthAt at;
    if (const auto torque = table.quantity("torque", Dimension::torque, Need::required))
        at.torque_Nm = torque->value_SI;
    if (const auto spread = table.quantity("spread", Dimension::torque))
        at.sd_Nm = spread->value_SI;
    if (!(at.torque_Nm > 0.0))
        table.add_error("torque", "nothing above 0", "a torque above 0");
    return at;
}

MeasuredStrength read_strength(TomlReader& table) {
    MeasuredStrength strength;
    if (table.has("torque"))
        strength.law = read_torque(table);
    else
        strength.law = read_curve(table);
    strength.angle_rad = read_angles(table, "valid");
    static const std::vector<std::string_view> kSexes{"female", "male"};
    if (const auto sex = table.choice("sex", kSexes, Need::required))
        strength.sex = static_cast<mechanics::Sex>(*sex);
    strength.people = table.text("people", Need::required).value_or("");
    strength.remark = table.text("remark").value_or("");
    strength.citation = read_citation(table);
    if (strength.citation.mark == mechanics::Evidence::memory)
        table.add_error("mark", "\"memory\"",
                        "a source that was seen: what people could hold is not told from memory");
    table.finish();
    return strength;
}

} // namespace

std::vector<MeasuredStrength> read_strengths(TomlReader& action) {
    std::vector<MeasuredStrength> strengths;
    for (TomlReader& table : action.tables("strength"))
        strengths.push_back(read_strength(table));
    return strengths;
}

} // namespace steelyard::setup
