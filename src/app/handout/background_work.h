#pragma once
// One piece of long work beside the frames.

#include "publish/files/progress.h"

#include <tl/expected.hpp>

#include <atomic>
#include <exception>
#include <functional>
#include <optional>
#include <string>
#include <thread>
#include <utility>

namespace steelyard::app {

/// Work that gives a Made, or a sentence saying why not; at most one at a time. It runs in a thread
/// of its own and touches nothing that frames change.
template <typename Made> class BackgroundWork {
public:
    using Result = tl::expected<Made, std::string>;
    using Work = std::function<Result(const publish::Progress&)>;

    BackgroundWork() = default;
    BackgroundWork(const BackgroundWork&) = delete;
    BackgroundWork& operator=(const BackgroundWork&) = delete;
    ~BackgroundWork() {
        stop();
        join();
    }

    /// Begins; what was running before must have been taken.
    void start(Work work) {
        join();
        stopped_ = false;
        finished_ = false;
        done_ = 0;
        all_ = 1;
        result_.reset();
        thread_ = std::thread([this, work = std::move(work)] {
            result_ = run(work);
            finished_ = true; // after the result: who sees it may read that
        });
    }

    /// True from the start until the result is taken.
    bool running() const { return thread_.joinable(); }

    /// How much is done, 0 to 1.
    double share() const {
        return static_cast<double>(done_.load()) / static_cast<double>(all_.load());
    }

    /// Asks it to end soon; its result still has to be taken.
    void stop() { stopped_ = true; }

    /// The result, once, as soon as it is there.
    std::optional<Result> take() {
        if (!running() || !finished_) {
            return std::nullopt;
        }
        join();
        return std::exchange(result_, std::nullopt);
    }

private:
    Result run(const Work& work) {
        try {
            return work([this](std::size_t done, std::size_t all) {
                done_ = done;
                all_ = all > 0 ? all : 1;
                return !stopped_;
            });
        } catch (const std::exception& error) { // memory that ran out
            return tl::make_unexpected(std::string(error.what()));
        }
    }
    void join() {
        if (thread_.joinable()) {
            thread_.join();
        }
    }

    std::thread thread_;
    std::atomic<bool> stopped_ = false;
    std::atomic<bool> finished_ = false;
    std::atomic<std::size_t> done_ = 0;
    std::atomic<std::size_t> all_ = 1;
    std::optional<Result> result_; ///< the thread's until finished_
};

} // namespace steelyard::app
