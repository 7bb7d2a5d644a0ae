#pragma once
// Cairo's counted objects, given back when their scope ends.

#include <cairo.h>

#include <memory>
#include <string>

namespace steelyard::paint {

struct FreeSurface {
    void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
struct FreeContext {
    void operator()(cairo_t* context) const { cairo_destroy(context); }
};
using CairoSurface = std::unique_ptr<cairo_surface_t, FreeSurface>;
using CairoContext = std::unique_ptr<cairo_t, FreeContext>;

/// For Cairo's stream surfaces: `bytes` is a std::string to append to.
inline cairo_status_t append_bytes(void* bytes, const unsigned char* data, unsigned int length) {
    static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
    return CAIRO_STATUS_SUCCESS;
}

} // namespace steelyard::paint
