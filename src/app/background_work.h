#pragma once
// One piece of long work beside the frames.

#include "app/platform/beside.h"
#include "publish/files/progress.h"

#include <tl/expected.hpp>

#include <atomic>
#include <functional>
#include <optional>
#include <string>
#include <utility>

namespace steelyard::app {

/// Work that gives a Made, or a sentence saying why not; at most one at a time. It runs beside
/// the frames and touches nothing that they change.
template <typename Made> class BackgroundWork {
public:
    using Result = tl::expected<Made, std::string>;
    using Work = std::function<Result(const publish::Progress&)>;
    /// Does a part of it; called until it gives a result.
    using Piece = std::function<std::optional<Result>(const publish::Progress&)>;

    BackgroundWork() = default;
    BackgroundWork(const BackgroundWork&) = delete;
    BackgroundWork& operator=(const BackgroundWork&) = delete;
    ~BackgroundWork() { stop(); }

    /// Begins; what was running before must have been taken.
    void start(Work work) {
        start_pieces([work = std::move(work)](const publish::Progress& progress) {
            return std::optional<Result>(work(progress));
        });
    }

    /// Begins one that frames can be drawn between where there are no threads.
    void start_pieces(Piece piece) {
        stopped_ = false;
        done_ = 0;
        all_ = 1;
        result_.reset();
        started_ = true;
        beside_.start([this, piece = std::move(piece)] {
            result_ = piece([this](std::size_t done, std::size_t all) {
                done_ = done;
                all_ = all > 0 ? all : 1;
                return !stopped_;
            });
            return result_.has_value();
        });
    }

    /// True from the start until the result is taken.
    bool running() const { return started_; }

    /// How much is done, 0 to 1.
    double share() const {
        return static_cast<double>(done_.load()) / static_cast<double>(all_.load());
    }

    /// Asks it to end soon; its result still has to be taken.
    void stop() { stopped_ = true; }

    /// The result, once, as soon as it is there.
    std::optional<Result> take() {
        if (!started_ || beside_.is_running())
            return std::nullopt;
        started_ = false;
        if (!beside_.fault().empty())
            return Result(tl::unexpect, beside_.fault());
        return std::exchange(result_, std::nullopt);
    }

private:
    std::atomic<bool> stopped_ = false;
    std::atomic<std::size_t> done_ = 0;
    std::atomic<std::size_t> all_ = 1;
    bool started_ = false;
    std::optional<Result> result_; ///< the work's while it runs
    Beside beside_;                ///< last: ends first
};

} // namespace steelyard::app
