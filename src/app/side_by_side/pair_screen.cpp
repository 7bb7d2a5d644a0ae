#include "app/side_by_side/pair_screen.h"

namespace steelyard::app {

std::optional<std::string> name_after(const std::vector<std::string>& names,
                                      const std::string& selected, int step) {
    if (names.empty())
        return std::nullopt;
    const auto count = static_cast<std::ptrdiff_t>(names.size());
    const auto found = std::find(names.begin(), names.end(), selected);
    const std::ptrdiff_t at = found == names.end() ? (step > 0 ? 0 : count - 1)
                                                   : (found - names.begin() + step + count) % count;
    return names[static_cast<std::size_t>(at)];
}

double nudged(const mechanics::ChangeRange& range, double hundredths) {
    const mechanics::Interval dial = dial_range(range, std::nullopt);
    return std::clamp(range.present + 0.01 * hundredths * (dial.high - dial.low), range.allowed.low,
                      range.allowed.high);
}

} // namespace steelyard::app
