#pragma once
// A PNG read back, for tests that look at its pixels.

#include "scene/palette.h"

#include <cairo.h>

#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <string>
#include <vector>

struct Picture {
    int width = 0;
    int height = 0;
    std::vector<std::uint32_t> pixels; ///< 0x00RRGGBB, row by row

    steelyard::scene::Rgb at(int x, int y) const {
        const std::uint32_t pixel = pixels.at(static_cast<std::size_t>(y * width + x));
        return {static_cast<std::uint8_t>(pixel >> 16 & 0xFFU),
                static_cast<std::uint8_t>(pixel >> 8 & 0xFFU),
                static_cast<std::uint8_t>(pixel & 0xFFU)};
    }
};

/// Reads a PNG; an empty picture when the bytes are none.
inline Picture picture_of(const std::string& png) {
    struct Rest {
        const std::string& bytes;
        std::size_t at = 0;
    } rest{png};
    const auto read = [](void* closure, unsigned char* to, unsigned int length) {
        Rest& from = *static_cast<Rest*>(closure);
        if (from.at + length > from.bytes.size())
            return CAIRO_STATUS_READ_ERROR;
        std::memcpy(to, from.bytes.data() + from.at, length);
        from.at += length;
        return CAIRO_STATUS_SUCCESS;
    };
    cairo_surface_t* surface = cairo_image_surface_create_from_png_stream(read, &rest);
    Picture picture;
    if (cairo_surface_status(surface) == CAIRO_STATUS_SUCCESS) {
        picture.width = cairo_image_surface_get_width(surface);
        picture.height = cairo_image_surface_get_height(surface);
        const unsigned char* row = cairo_image_surface_get_data(surface);
        for (int y = 0; y < picture.height; ++y, row += cairo_image_surface_get_stride(surface)) {
            for (int x = 0; x < picture.width; ++x) {
                std::uint32_t pixel = 0;
                std::memcpy(&pixel, row + 4 * x, sizeof pixel);
                picture.pixels.push_back(pixel & 0xFFFFFFU);
            }
        }
    }
    cairo_surface_destroy(surface);
    return picture;
}

/// True when two colours differ by at most 2 of 255 in each channel: rounding of blending.
inline bool alike(steelyard::scene::Rgb one, steelyard::scene::Rgb other) {
    return std::abs(one.red - other.red) <= 2 && std::abs(one.green - other.green) <= 2 &&
           std::abs(one.blue - other.blue) <= 2;
}
