#include "lesson/lesson_move.h"

#include "lesson/lesson_change.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::lesson {

namespace {

/// Places at which a move is tried, both ends among them.
constexpr int kTried = 9;

LessonChange change_to(const LessonMove& move, double value_SI) {
    setup::WrittenQuantity written = move.from;
    written.value_SI = value_SI;
    return {move.part, {{move.key, written}}, move.line};
}

/// An error of a change, said of the move that it stands for.
setup::InputError of_move(setup::InputError error) {
    constexpr std::string_view kChange = "change";
    if (error.key.compare(0, kChange.size(), kChange) == 0)
        error.key = "move" + error.key.substr(kChange.size());
    return error;
}

} // namespace

double value_at(const LessonMove& move, double share) {
    return move.from.value_SI + share * (move.to.value_SI - move.from.value_SI);
}

tl::expected<double, setup::InputError> share_now(const LessonStage& stage,
                                                  const LessonMove& move) {
    double value_SI = stage.progress;
    if (move.part != kProgress) {
        const auto present = present_value(change_to(move, 0.0), move.key, stage.setup);
        if (!present)
            return tl::make_unexpected(of_move(present.error()));
        value_SI = *present;
    }
    const double way = move.to.value_SI - move.from.value_SI;
    return way == 0.0 ? 0.0 : std::clamp((value_SI - move.from.value_SI) / way, 0.0, 1.0);
}

tl::expected<LessonStage, setup::InputError> moved_stage(const LessonStage& stage,
                                                         const LessonMove& move, double share) {
    LessonStep step;
    if (move.part == kProgress)
        step.progress = value_at(move, share);
    else
        step.changes = {change_to(move, value_at(move, share))};
    auto moved = make_stage(step, &stage, nullptr);
    if (!moved)
        return tl::make_unexpected(of_move(moved.error()));
    return moved;
}

std::optional<setup::InputError> try_move(const LessonStep& step, const QuantitySource& source) {
    const LessonMove& move = *step.move;
    if (move.from.value_SI == move.to.value_SI)
        return setup::InputError{"", move.line, 0, "move.to", "the same as from", "another end",
                                 ""};
    if (const auto share = share_now(step.stage, move); !share)
        return share.error();
    for (int i = 0; i < kTried; ++i) {
        const auto stage = moved_stage(step.stage, move, i / (kTried - 1.0));
        if (!stage)
            return stage.error();
        const auto solved = solve_stage(*stage); // make_stage has solved it before
        for (const std::string& name : move.shows)
            if (const auto read = read_quantity(name, {&*solved, source.before, source.muscles});
                !read)
                return setup::InputError{"",
                                         move.line,
                                         0,
                                         "move.shows",
                                         fmt::format("\"{}\"", name),
                                         "quantities of this stage",
                                         read.error()};
    }
    return std::nullopt;
}

} // namespace steelyard::lesson
