#include "app/platform/loop.h"

#include "app/platform/clock.h"

#include <GLFW/glfw3.h>

#include <cmath>

namespace steelyard::app {

double now_s() {
    return glfwGetTime();
}

void wake() {
    glfwPostEmptyEvent();
}

void take_turns(std::unique_ptr<Turns> turns) {
    while (!turns->is_over()) {
        glfwPollEvents();
        const double rest_s = turns->rest_s();
        if (std::isinf(rest_s))
            glfwWaitEvents();
        else if (rest_s > 0.0)
            glfwWaitEventsTimeout(rest_s);
        turns->turn();
    }
}

} // namespace steelyard::app
