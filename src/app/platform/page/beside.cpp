#include "app/platform/beside.h"

#include "app/platform/clock.h"
#include "app/platform/loop.h"

namespace steelyard::app {

namespace {

/// A slice between two frames [s]: half of a frame is left for drawing.
constexpr double kSlice_s = 0.008;

} // namespace

struct Beside::Work {
    Piece piece;
    bool ended = false;
};

Beside::Beside() = default;
Beside::Beside(Beside&&) noexcept = default;
Beside& Beside::operator=(Beside&&) noexcept = default;
Beside::~Beside() = default;

void Beside::start(Piece piece) {
    work_ = std::make_unique<Work>(Work{std::move(piece)});
    wake();
}

void Beside::stop() {
    if (work_)
        work_->ended = true;
}

bool Beside::is_running() const {
    if (!work_)
        return false;
    const double until_s = now_s() + kSlice_s;
    while (!work_->ended && now_s() < until_s)
        work_->ended = work_->piece();
    if (!work_->ended)
        wake(); // to be asked again in the next frame
    return !work_->ended;
}

const std::string& Beside::fault() const {
    static const std::string none;
    return none;
}

} // namespace steelyard::app
