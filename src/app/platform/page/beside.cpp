#include "app/platform/beside.h"

#include "app/platform/clock.h"
#include "app/platform/loop.h"

#include <algorithm>
#include <emscripten.h>
#include <utility>
#include <vector>

namespace steelyard::app {

namespace {

/// A slice [s]: short enough that what comes in is heard between two of them.
constexpr double kSlice_s = 0.008;
/// The browser gets this long between slices [ms].
constexpr int kPause_ms = 2;

} // namespace

struct Beside::Work {
    explicit Work(Piece its_piece) : piece(std::move(its_piece)) {
        all().push_back(this);
        call(0);
    }
    Work(const Work&) = delete;
    Work& operator=(const Work&) = delete;
    ~Work() { end(); }

    /// All that has not ended. The browser calls by itself, not from within frames: a slow screen
    /// would leave no time for them.
    static std::vector<Work*>& all() {
        static std::vector<Work*> works;
        return works;
    }
    static bool& is_called() {
        static bool called = false;
        return called;
    }
    static void call(int in_ms) {
        if (!std::exchange(is_called(), true))
            emscripten_async_call(go_on, nullptr, in_ms);
    }
    static void go_on(void* /*nothing*/);
    void end() { all().erase(std::remove(all().begin(), all().end(), this), all().end()); }
    bool has_ended() const { return std::find(all().begin(), all().end(), this) == all().end(); }

    Piece piece;
};

/// The next slice, of the work that was begun first.
void Beside::Work::go_on(void* /*nothing*/) {
    is_called() = false;
    const double until_s = now_s() + kSlice_s;
    while (!all().empty() && now_s() < until_s) {
        Work* const work = all().front();
        if (!work->piece())
            continue;
        work->end();
        wake();
    }
    if (!all().empty())
        call(kPause_ms);
}

Beside::Beside() = default;
Beside::Beside(Beside&&) noexcept = default;
Beside& Beside::operator=(Beside&&) noexcept = default;
Beside::~Beside() = default;

void Beside::start(Piece piece) {
    work_ = std::make_unique<Work>(std::move(piece));
}

void Beside::stop() {
    if (work_)
        work_->end();
}

bool Beside::is_running() const {
    return work_ && !work_->has_ended();
}

const std::string& Beside::fault() const {
    static const std::string none;
    return none;
}

} // namespace steelyard::app
