#pragma once
// The changes that reach a goal, searched for one by one while frames are drawn: the list of
// `steelyard whatif`.

#include "app/platform/background.h"
#include "mechanics/whatif/whatif.h"

#include <string>
#include <vector>

namespace steelyard::app {

class WaySearch {
public:
    /// Begins anew for another exercise or goal; what runs for an older one is dropped.
    /// @param changes  to try, as possible_changes gives them
    void ask(const mechanics::Exercise& exercise, const mechanics::Goal& goal,
             std::vector<mechanics::Change> changes);

    /// Wants nothing more; what was found is forgotten.
    void stop();

    /// Wants to know in which part of its range a change keeps the goal's caps and the balance.
    void ask_spans(const mechanics::Change& change);

    /// Takes what was found and starts the next. To be called once a frame.
    /// @return true when something new is known
    bool advance();

    /// True while something is still sought.
    bool is_searching() const;
    /// True when something was found that advance has yet to take. The window is woken for it.
    bool has_news() const { return ways_task_.is_ready() || spans_task_.is_ready(); }
    /// How many of the changes have been tried, and how many there are.
    std::size_t tried() const { return tried_; }
    std::size_t changes() const { return changes_.size(); }

    /// True when every change has been tried for the present question.
    bool is_complete() const { return tried_ >= changes_.size(); }
    /// What was found, in the order in which a coach would try it, and what cannot. While the
    /// search goes on this is the answer to the question before: a list that grows would move under
    /// the hand.
    const mechanics::RankedWays& found() const { return found_; }
    /// Of the change asked for with ask_spans; empty until they are known.
    const std::optional<std::vector<mechanics::AllowedSpan>>& spans() const { return spans_; }

private:
    using Ways = tl::expected<mechanics::RankedWays, mechanics::MechanicsError>;
    using Spans = tl::expected<std::vector<mechanics::AllowedSpan>, mechanics::MechanicsError>;

    void add(mechanics::RankedWays ways);
    bool take_ways();
    bool take_spans();

    mechanics::Exercise exercise_;
    mechanics::Goal goal_;
    std::vector<mechanics::Change> changes_;
    std::size_t tried_ = 0;
    mechanics::RankedWays found_;
    mechanics::RankedWays growing_;                 ///< becomes found_ when it is complete
    std::optional<mechanics::Change> spans_wanted_; ///< yet to be started
    std::optional<std::vector<mechanics::AllowedSpan>> spans_;
    bool ways_are_stale_ = false; ///< what runs is for an older question
    bool spans_are_stale_ = false;
    Background<Ways> ways_task_;
    Background<Spans> spans_task_;
};

} // namespace steelyard::app
