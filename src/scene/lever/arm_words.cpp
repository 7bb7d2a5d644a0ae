#include "scene/lever/arm_words.h"

#include "mechanics/constants.h"
#include "scene/marks/text_width.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

constexpr double kPastEnd_px = 8.0; ///< from the end of an arm to words beyond it
constexpr double kLine_px = 20.0;
constexpr double kAbove_px = 8.0; ///< from the arm up to the baseline of what stands on it
constexpr double kBelow_px = 19.0;
constexpr const char* kName = "moment arm";

class ArmWriter {
public:
    ArmWriter(const ArmWords& words, double text_scale)
        : from_(words.arm.axis + words.arm.shift), to_(words.arm.foot + words.arm.shift),
          along_((to_ - from_).normalized()), turn_rad_(std::atan2(along_.y(), along_.x())),
          words_(words), text_scale_(text_scale) {
        if (std::abs(turn_rad_) > 0.5 * mechanics::kPi) // keep the text upright
            turn_rad_ -= std::copysign(mechanics::kPi, turn_rad_);
    }

    std::vector<Label> in_one_line() const {
        std::vector<Label> ways;
        for (const double share : kShares)
            for (const double rise_px : {text(kAbove_px), -text(kBelow_px)})
                ways.push_back(label(share, rise_px, whole()));
        return ways;
    }

    /// Each way a pair: the name above, the length below it.
    std::vector<std::pair<Label, Label>> in_two_lines() const {
        std::vector<std::pair<Label, Label>> ways;
        for (const double share : kShares)
            for (const double rise_px : {text(kAbove_px), -text(kBelow_px + kLine_px)}) {
                const Label name = label(share, rise_px + text(kLine_px), kName);
                Label length = name;
                length.text = words_.length;
                length.at -= text(kLine_px) * up();
                ways.emplace_back(name, length);
            }
        return ways;
    }

    /// For an arm that is shorter than its words.
    std::vector<Label> apart() const {
        std::vector<Label> ways;
        if ((to_ - from_).norm() > 1.0)
            for (const bool outward : {true, false})
                ways.push_back(past_end(outward ? to_ : from_, outward ? along_ : -along_));
        const auto aside = [&](const Point& at, double gap_px) {
            ways.push_back(level(at + Point(gap_px, 0.0), Align::left));
            ways.push_back(level(at - Point(gap_px, 0.0), Align::right));
        };
        for (const double lines : {0.0, 1.0}) // beside the axis, over its neighbour
            aside(from_ + text(kAbove_px + lines * (kLine_px - 2.0)) * up(), 12.0);
        aside(0.5 * (from_ + to_) + Point(0.0, text(5.0)), 14.0);
        return ways;
    }

private:
    static constexpr double kShares[] = {0.5, 0.35, 0.65, 0.8};

    double text(double px) const { return px * text_scale_; }
    Point up() const { return {std::sin(turn_rad_), -std::cos(turn_rad_)}; }
    std::string whole() const { return kName + (' ' + words_.length); }

    /// Words along the arm. They do not go past the axis, where another arm may begin: those of
    /// short arms stand farther out.
    Label label(double share, double rise_px, const std::string& line) const {
        const double half_px = 0.5 * text_width_px(line, TextSize::body, false, text_scale_);
        const double out_px = std::max(share * (to_ - from_).norm(), half_px);
        Label label = make_label(from_ + out_px * along_ + rise_px * up(), line, TextSize::body,
                                 words_.role, Align::centre);
        label.turn_rad = turn_rad_;
        return label;
    }

    Label level(const Point& at, Align align) const {
        return make_label(at, whole(), TextSize::body, words_.role, align);
    }

    Label past_end(const Point& end, const Point& outward) const {
        if (outward.x() > 0.4)
            return level(end + Point(kPastEnd_px, text(5.0)), Align::left);
        if (outward.x() < -0.4)
            return level(end + Point(-kPastEnd_px, text(5.0)), Align::right);
        return level(end + Point(0.0, outward.y() > 0.0 ? text(22.0) : -text(10.0)), Align::centre);
    }

    Point from_;
    Point to_;
    Point along_;
    double turn_rad_;
    const ArmWords& words_;
    double text_scale_;
};

} // namespace

void add_arm_words(const ArmWords& words, double text_scale, LabelBoard& board,
                   std::vector<Shape>& shapes) {
    const ArmWriter writer(words, text_scale);
    std::vector<Label> ways = writer.in_one_line();
    const auto is_free = [&](const Label& label) { return board.is_free(label); };
    if (std::none_of(ways.begin(), ways.end(), is_free))
        for (const auto& [name, length] : writer.in_two_lines())
            if (is_free(name) && is_free(length)) {
                for (const Label& line : {name, length})
                    shapes.emplace_back(board.place({line}));
                return;
            }
    const std::vector<Label> apart = writer.apart();
    ways.insert(ways.end(), apart.begin(), apart.end());
    shapes.emplace_back(board.place(ways));
}

} // namespace steelyard::scene
