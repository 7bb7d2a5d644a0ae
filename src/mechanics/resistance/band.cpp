#include "mechanics/resistance/band.h"

#include <cmath>

namespace steelyard::mechanics {

namespace {

/// Rounding of a length must not put a band past the end of its table [-].
constexpr double kStretchRounding = 1.0e-9;

std::string centimetres(double length_m) {
    const long tenths = std::lround(length_m * 1000.0);
    return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + " cm";
}

/// Straight between entries, from no force at no stretch.
double table_force(const TableBand& table, double stretch) {
    StretchEntry before;
    for (const StretchEntry& entry : table.entries) {
        if (stretch <= entry.stretch) {
            const double width = entry.stretch - before.stretch;
            const double part = width > 0.0 ? (stretch - before.stretch) / width : 1.0;
            return before.force_N + part * (entry.force_N - before.force_N);
        }
        before = entry;
    }
    return before.force_N;
}

} // namespace

tl::expected<double, MechanicsError> band_force(const Band& band, double length_m) {
    const double longer_m = length_m - band.slack_length_m;
    if (longer_m <= 0.0)
        return 0.0;
    if (const auto* linear = std::get_if<LinearBand>(&band.law))
        return linear->stiffness_N_m * longer_m;

    const auto& table = std::get<TableBand>(band.law);
    const double stretch = longer_m / band.slack_length_m;
    const double most = table.entries.back().stretch;
    if (stretch > most + kStretchRounding)
        return tl::unexpected(MechanicsError{
            Fault::out_of_range, "law",
            "a band no longer than its table covers, " +
                centimetres(band.slack_length_m * (1.0 + most)) + " (here it is stretched to " +
                centimetres(length_m) + "): a longer band, a nearer anchor or a longer table"});
    return table_force(table, stretch);
}

} // namespace steelyard::mechanics
