#pragma once
// Undo and redo as a row of whole states: states are small values, so keeping them is simplest.

#include <cstddef>
#include <utility>
#include <vector>

namespace steelyard::app {

/// Earlier and later states of a value. A gesture (one drag, one run of nudges) counts as one step.
template <typename State> class History {
public:
    /// Notes the state that is about to be changed.
    /// @param gesture  0 = a step of its own; else steps of the same gesture are one
    void before_change(const State& present, int gesture) {
        later_.clear();
        ++steps_;
        if (gesture != 0 && gesture == last_gesture_)
            return;
        last_gesture_ = gesture;
        earlier_.push_back(present);
        if (earlier_.size() > kMost)
            earlier_.erase(earlier_.begin());
    }

    /// Nothing before this moment can be gone back to.
    void forget() {
        earlier_.clear();
        later_.clear();
        last_gesture_ = 0;
        ++steps_;
    }

    /// Counts changes, undone and done again ones too: it differs after each of them.
    std::size_t steps() const { return steps_; }
    bool can_undo() const { return !earlier_.empty(); }
    bool can_redo() const { return !later_.empty(); }

    /// The state before the present one, which moves to the later ones. can_undo() must hold.
    State undo(State present) { return step(earlier_, later_, std::move(present)); }
    State redo(State present) { return step(later_, earlier_, std::move(present)); }

private:
    static constexpr std::size_t kMost = 500;

    State step(std::vector<State>& from, std::vector<State>& to, State present) {
        last_gesture_ = 0;
        ++steps_;
        to.push_back(std::move(present));
        State state = std::move(from.back());
        from.pop_back();
        return state;
    }

    std::vector<State> earlier_;
    std::vector<State> later_;
    int last_gesture_ = 0;
    std::size_t steps_ = 0;
};

} // namespace steelyard::app
