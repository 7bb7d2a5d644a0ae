#pragma once
// One computation at a time beside the drawing of frames.

#include <functional>
#include <future>
#include <memory>
#include <mutex>
#include <optional>
#include <utility>

namespace steelyard::app {

/// Runs a pure function on values of its own and hands over what it returned. A page in a browser
/// has no threads: there it runs when its result is taken.
template <typename Result> class Background {
public:
    bool is_running() const { return shared_ != nullptr; }

    /// True when a result is there to be taken.
    bool is_ready() const {
        if (!is_running())
            return false;
#ifdef __EMSCRIPTEN__
        return true;
#else
        const std::lock_guard<std::mutex> lock(shared_->mutex);
        return shared_->result.has_value();
#endif
    }

    /// Starts a computation; none may be running. What it works on must be copied into it.
    /// @param announce  called when the result is there, from the other thread
    void start(std::function<Result()> compute, void (*announce)()) {
        shared_ = std::make_shared<Shared>();
        auto work = [shared = shared_, compute = std::move(compute), announce] {
            Result result = compute();
            {
                const std::lock_guard<std::mutex> lock(shared->mutex);
                shared->result = std::move(result);
            }
            announce();
        };
#ifdef __EMSCRIPTEN__
        done_ = std::async(std::launch::deferred, std::move(work));
#else
        done_ = std::async(std::launch::async, std::move(work));
#endif
    }

    /// The result, once, when it is there.
    std::optional<Result> take() {
        if (!is_ready())
            return std::nullopt;
        done_.get();
        std::optional<Result> result = std::move(shared_->result);
        shared_.reset();
        return result;
    }

private:
    struct Shared {
        std::mutex mutex;
        std::optional<Result> result;
    };
    std::shared_ptr<Shared> shared_; ///< null = nothing runs
    std::future<void> done_;         ///< its destructor waits for a computation that still runs
};

} // namespace steelyard::app
