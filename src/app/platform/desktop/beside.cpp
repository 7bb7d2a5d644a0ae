#include "app/platform/beside.h"

#include "app/platform/loop.h"

#include <atomic>
#include <exception>
#include <thread>

namespace steelyard::app {

struct Beside::Work {
    explicit Work(Piece piece) : thread([this, piece = std::move(piece)] { run(piece); }) {}
    Work(const Work&) = delete;
    Work& operator=(const Work&) = delete;
    ~Work() {
        stopped = true;
        thread.join();
    }

    void run(const Piece& piece) {
        try {
            while (!stopped && !piece()) {
            }
        } catch (const std::exception& error) { // memory that ran out
            fault = error.what();
        }
        ended = true; // after all else: who sees it may read that
        wake();
    }

    std::string fault; ///< the thread's until it has ended
    std::atomic<bool> stopped{false};
    std::atomic<bool> ended{false};
    std::thread thread; ///< last: it begins when all else is there
};

Beside::Beside() = default;
Beside::Beside(Beside&&) noexcept = default;
Beside& Beside::operator=(Beside&&) noexcept = default;
Beside::~Beside() = default;

void Beside::start(Piece piece) {
    work_.reset();
    work_ = std::make_unique<Work>(std::move(piece));
}

void Beside::stop() {
    if (work_)
        work_->stopped = true;
}

bool Beside::is_running() const {
    return work_ && !work_->ended;
}

const std::string& Beside::fault() const {
    static const std::string none;
    return work_ && work_->ended ? work_->fault : none;
}

} // namespace steelyard::app
