#pragma once
// One computation at a time beside the drawing of frames, and what it returned.

#include "app/platform/beside.h"

#include <functional>
#include <memory>
#include <optional>
#include <utility>

namespace steelyard::app {

/// Runs a pure function on values of its own and hands over what it returned.
template <typename Result> class Background {
public:
    /// True until what was started has been taken.
    bool is_running() const { return result_ != nullptr; }

    /// True when a result is there to be taken.
    bool is_ready() const { return is_running() && !beside_.is_running() && result_->has_value(); }

    /// Starts a computation in one piece; none may be running. What it works on must be copied into
    /// it.
    void start(std::function<Result()> compute) {
        start_pieces([compute = std::move(compute)] { return std::optional<Result>(compute()); });
    }

    /// Starts one that gives its result after several calls.
    void start_pieces(std::function<std::optional<Result>()> piece) {
        result_ = std::make_shared<std::optional<Result>>();
        beside_.start([result = result_, piece = std::move(piece)] {
            *result = piece();
            return result->has_value();
        });
    }

    /// The result, once, when it is there.
    std::optional<Result> take() {
        if (!is_ready())
            return std::nullopt;
        return std::move(*std::exchange(result_, nullptr));
    }

private:
    std::shared_ptr<std::optional<Result>> result_; ///< the work's until it is done; null = none
    Beside beside_;
};

} // namespace steelyard::app
