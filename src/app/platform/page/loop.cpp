#include "app/platform/loop.h"

#include "app/platform/clock.h"

#include <emscripten.h>

namespace steelyard::app {

namespace {

/// The browser calls about sixty times a second: a turn that is due before the next call is taken.
constexpr double kNextCall_s = 0.008;

void look_in(void* kept) {
    auto* const turns = static_cast<Turns*>(kept);
    if (turns->rest_s() < kNextCall_s)
        turns->turn();
}

} // namespace

double now_s() {
    return emscripten_get_now() / 1000.0;
}

/// Looking in costs microseconds; a frame is only drawn when one is owed.
void take_turns(std::unique_ptr<Turns> turns) {
    emscripten_set_main_loop_arg(look_in, turns.release(), 0, EM_FALSE);
}

/// The browser looks in anyway.
void wake() {
    EM_ASM({ Module._page_stirred(); });
}

} // namespace steelyard::app
