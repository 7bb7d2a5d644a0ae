#include "app/platform/extras.h"

namespace steelyard::app {

std::span<const Extra> extras() {
    return {};
}

} // namespace steelyard::app
