#include "app/side_by_side/way_search.h"

#include "words/whatif/gym_moves.h"

#include <algorithm>

namespace steelyard::app {

namespace {

/// Readings of a repetition in a piece of work: about 4 ms here, three times that in a page.
constexpr int kReadings = 12;

/// Goes on with a search. @return its result; empty when it paused
template <typename Search>
auto a_little_more(mechanics::Pace& pace, const Search& search)
    -> std::optional<decltype(search())> {
    pace.readings_left = kReadings;
    pace.paused = false;
    auto found = search();
    if (pace.paused)
        return std::nullopt;
    return found;
}

} // namespace

void WaySearch::ask(const mechanics::Exercise& exercise, const mechanics::Goal& goal,
                    std::vector<mechanics::Change> changes) {
    exercise_ = exercise;
    goal_ = goal;
    changes_ = std::move(changes);
    tried_ = 0;
    growing_ = {};
    ways_are_stale_ = ways_task_.is_running();
}

void WaySearch::stop() {
    changes_.clear();
    tried_ = 0;
    found_ = {};
    spans_.reset();
    spans_wanted_.reset();
    ways_are_stale_ = ways_task_.is_running();
    spans_are_stale_ = spans_task_.is_running();
}

void WaySearch::ask_spans(const mechanics::Change& change) {
    spans_wanted_ = change;
    spans_.reset();
    spans_are_stale_ = spans_task_.is_running();
}

bool WaySearch::is_searching() const {
    return tried_ < changes_.size() || ways_task_.is_running() || spans_wanted_ ||
           spans_task_.is_running();
}

void WaySearch::add(mechanics::RankedWays ways) {
    for (mechanics::Way& way : ways.ways)
        growing_.ways.push_back(std::move(way));
    for (mechanics::RefusedWay& refused : ways.refused)
        growing_.refused.push_back(std::move(refused));
}

bool WaySearch::take_ways() {
    auto ways = ways_task_.take();
    if (!ways)
        return false;
    if (std::exchange(ways_are_stale_, false))
        return false;
    ++tried_;
    if (*ways) // else the exercise cannot have this change after all: it is in neither list
        add(std::move(**ways));
    if (is_complete()) {
        found_ = std::exchange(growing_, {});
        words::order_for_the_gym(found_, exercise_);
    }
    return true;
}

bool WaySearch::take_spans() {
    auto spans = spans_task_.take();
    if (!spans || std::exchange(spans_are_stale_, false))
        return false;
    if (*spans)
        spans_ = std::move(**spans);
    return true;
}

bool WaySearch::advance() {
    const bool new_ways = take_ways();
    const bool new_spans = take_spans();
    if (!ways_task_.is_running() && tried_ < changes_.size())
        ways_task_.start_pieces([exercise = exercise_, goal = goal_, change = changes_[tried_],
                                 pace = mechanics::Pace()]() mutable {
            return a_little_more(
                pace, [&] { return mechanics::ranked_ways(exercise, goal, change, pace); });
        });
    if (!spans_task_.is_running() && spans_wanted_) {
        spans_task_.start_pieces([exercise = exercise_, caps = goal_.wanted.caps,
                                  change = *spans_wanted_, pace = mechanics::Pace()]() mutable {
            return a_little_more(
                pace, [&] { return mechanics::feasible_settings(exercise, change, caps, &pace); });
        });
        spans_wanted_.reset();
    }
    return new_ways || new_spans;
}

} // namespace steelyard::app
