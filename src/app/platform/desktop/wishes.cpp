#include "app/platform/wishes.h"

namespace steelyard::app {

SystemWishes system_wishes() {
    return {}; // desktops each have a way of their own to tell, and GLFW knows none of them
}

void ask_for_digits() {}

} // namespace steelyard::app
