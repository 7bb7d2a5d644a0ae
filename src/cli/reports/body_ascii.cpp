#include "cli/reports/body_ascii.h"

#include "cli/reports/ascii_sheet.h"
#include "mechanics/body/landmarks.h"
#include "problems/draw/body_quantities.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <string_view>

namespace steelyard::cli {

namespace {

using mechanics::Segment;
using mechanics::Vec2;
using mechanics::Vec3;
using problems::BodyPicture;

constexpr int kMostRows = 20;
/// Of the figure so much is shown around what the question is about [m].
constexpr double kAround_m = 0.3;
/// A force that is seen shorter than this share of itself points at the eye or away from it [-].
constexpr double kEndOn = 0.2;

constexpr std::string_view kAxisLetters = "oabcdefg";
constexpr std::string_view kLoadLetters = "L234";
constexpr std::string_view kWeightLetters = "WXYZ";
constexpr std::string_view kLengthLetters = ".:~-";

char letter_at(std::string_view letters, std::size_t index) {
    return letters[std::min(index, letters.size() - 1)];
}

/// A line of a force seen from the side of the drawing.
struct SeenPull {
    Vec2 point_m;
    Vec2 along; ///< as long as it is seen
    bool end_on;
};

class BodySketch {
public:
    BodySketch(const BodyPicture& picture, const mechanics::BodyResult& result, int columns)
        : picture_(picture), result_(result), sheet_(shown_piece(), kMostRows, columns) {}

    std::string draw(const std::vector<MarkedLine>& marks) {
        add_figure();
        add_lengths(marks);
        add_weights();
        add_loads();
        add_axes();
        return sheet_.text() + legend_;
    }

private:
    Vec2 seen(const Vec3& place_m) const { return problems::in_view(picture_.view, place_m); }

    SeenPull seen(const mechanics::BodyForce& force) const {
        const Vec2 along = seen(force.force_N);
        return {seen(force.point_m), along, along.norm() <= kEndOn * force.force_N.norm()};
    }

    Vec3 tip_of(Segment segment) const {
        return result_.placement[segment].at(picture_.body_case.body[segment].tip_m);
    }

    /// Corners of what is to be seen: all that the question names, and some of the body around.
    std::vector<Vec2> shown_piece() const {
        std::vector<Vec2> named;
        for (const BodyPicture::Axis& axis : picture_.axes)
            named.push_back(seen(result_.placement.axis_point_m(axis.hinge)));
        for (const mechanics::BodyForce& force : result_.forces)
            if (force.origin == mechanics::ForceOrigin::resistance)
                named.push_back(seen(force.point_m));
        for (const BodyPicture::Weight& weight : picture_.weights)
            named.push_back(weight.at_m);
        Vec2 low = named.front();
        Vec2 high = named.front();
        for (const Vec2& point : named) {
            low = low.cwiseMin(point);
            high = high.cwiseMax(point);
        }
        return within_figure(low - Vec2(kAround_m, kAround_m), high + Vec2(kAround_m, kAround_m));
    }

    /// The piece without what lies beyond the body.
    std::vector<Vec2> within_figure(const Vec2& low, const Vec2& high) const {
        const Vec2 start = seen(result_.placement[Segment::pelvis].joint_m);
        Vec2 body_low = start;
        Vec2 body_high = start;
        for (std::size_t i = 0; i < mechanics::kSegmentCount; ++i) {
            const Vec2 tip = seen(tip_of(static_cast<Segment>(i)));
            body_low = body_low.cwiseMin(tip);
            body_high = body_high.cwiseMax(tip);
        }
        return {low.cwiseMax(body_low), high.cwiseMin(body_high)};
    }

    void bone(const Vec3& from_m, const Vec3& to_m) { sheet_.line(seen(from_m), seen(to_m)); }

    void add_figure() {
        if (picture_.view == setup::BodyView::above)
            legend_ += "  (seen from above)\n";
        else if (picture_.view == setup::BodyView::front)
            legend_ += "  (seen from the front)\n";
        const auto joint = [&](Segment segment) { return result_.placement[segment].joint_m; };
        bone(joint(Segment::right_upper_arm), joint(Segment::left_upper_arm));
        bone(joint(Segment::right_thigh), joint(Segment::left_thigh));
        for (std::size_t i = 0; i < mechanics::kSegmentCount; ++i) {
            const auto segment = static_cast<Segment>(i);
            if (segment != Segment::head && !mechanics::is_girdle(segment))
                bone(joint(segment), tip_of(segment));
        }
        const Vec2 head = seen(result_.placement[Segment::head].com_m);
        sheet_.set(sheet_.column(head) - 1, sheet_.row(head), '(');
        sheet_.set(sheet_.column(head), sheet_.row(head), ' ');
        sheet_.set(sheet_.column(head) + 1, sheet_.row(head), ')');
    }

    void add_lengths(const std::vector<MarkedLine>& marks) {
        int beside = 0;
        for (std::size_t i = 0; i < picture_.labels.size(); ++i) {
            const problems::DrawnQuantity& label = picture_.labels[i];
            const char c = letter_at(kLengthLetters, i);
            sheet_.trace(label.from_m, label.to_m, c, ++beside);
            lengths_ += fmt::format("  {} {}\n", c, in_legend(label));
        }
        for (const MarkedLine& mark : marks) {
            sheet_.trace(mark.line.from_m, mark.line.to_m, mark.character, ++beside);
            lengths_ += fmt::format("  {} {}: {}\n", mark.character, mark.says, mark.line.text);
        }
    }

    void add_pull(const SeenPull& pull, char letter) {
        if (pull.end_on)
            sheet_.set(sheet_.column(pull.point_m), sheet_.row(pull.point_m), letter);
        else
            sheet_.arrow(pull.point_m, std::atan2(pull.along.y(), pull.along.x()), letter);
    }

    void add_weights() {
        for (std::size_t i = 0; i < picture_.weights.size(); ++i) {
            const BodyPicture::Weight& weight = picture_.weights[i];
            const char letter = letter_at(kWeightLetters, i);
            add_pull({weight.at_m, Vec2(0.0, -1.0), picture_.view == setup::BodyView::above},
                     letter);
            loads_ += fmt::format("  {} weight of the {}\n", letter, weight.name);
        }
    }

    /// The letter of a resistance: things of one name share it.
    char letter_of(std::size_t index) const {
        std::vector<std::string_view> names;
        for (const mechanics::Resistance& each : picture_.body_case.resistances)
            if (std::find(names.begin(), names.end(), each.name) == names.end())
                names.push_back(each.name);
        const auto found =
            std::find(names.begin(), names.end(), picture_.body_case.resistances[index].name);
        return letter_at(kLoadLetters, static_cast<std::size_t>(found - names.begin()));
    }

    void add_loads() {
        std::string drawn;
        for (const mechanics::BodyForce& force : result_.forces) {
            if (force.origin != mechanics::ForceOrigin::resistance)
                continue;
            const char letter = letter_of(force.index);
            add_pull(seen(force), letter);
            if (drawn.find(letter) != std::string::npos)
                continue;
            drawn += letter;
            loads_ += fmt::format("  {} load: {}\n", letter,
                                  picture_.body_case.resistances[force.index].name);
        }
    }

    /// Above all else, so that it can always be seen.
    void add_axes() {
        for (std::size_t i = 0; i < picture_.axes.size(); ++i) {
            const BodyPicture::Axis& axis = picture_.axes[i];
            const Vec2 at = seen(result_.placement.axis_point_m(axis.hinge));
            const char letter = letter_at(kAxisLetters, i);
            sheet_.set(sheet_.column(at), sheet_.row(at), letter);
            legend_ += fmt::format("  {} {}{}\n", letter, picture_.axes.size() == 1 ? "axis: " : "",
                                   axis.name);
        }
        legend_ += loads_ + lengths_;
    }

    const BodyPicture& picture_;
    const mechanics::BodyResult& result_;
    AsciiSheet sheet_;
    std::string legend_;
    std::string loads_;
    std::string lengths_;
};

} // namespace

std::string draw_in_ascii(const BodyPicture& picture, int columns,
                          const std::vector<MarkedLine>& marks) {
    const auto result = mechanics::solve_body(picture.body_case);
    if (!result || picture.axes.empty())
        return {};
    return BodySketch(picture, *result, columns).draw(marks);
}

} // namespace steelyard::cli
