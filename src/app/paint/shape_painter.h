#pragma once
// Paints shape records with OpenGL: one program, one draw call for the whole sheet.

#include "app/paint/shape_batch.h"

#include <tl/expected.hpp>

#include <cstdint>
#include <string>
#include <vector>

namespace steelyard::app {

/// Owns the shader program and the buffer. Needs a current OpenGL 3.3 core context for its whole
/// life.
class ShapePainter {
public:
    /// Compiles the shaders.
    /// @return the painter, or what the driver said when it refused them
    static tl::expected<ShapePainter, std::string> create();

    ShapePainter(ShapePainter&& other) noexcept;
    ShapePainter& operator=(ShapePainter&& other) noexcept;
    ShapePainter(const ShapePainter&) = delete;
    ShapePainter& operator=(const ShapePainter&) = delete;
    ~ShapePainter();

    /// Paints records in their order over what is there.
    /// @param sheet_px       size of the whole sheet [px]
    /// @param device_pixels  framebuffer pixels per sheet pixel
    void paint(const std::vector<ShapeRecord>& records, const scene::Point& sheet_px,
               double device_pixels);

private:
    ShapePainter() = default;
    void upload(const std::vector<ShapeRecord>& records);

    unsigned program_ = 0;
    unsigned vertex_array_ = 0;
    unsigned buffer_ = 0;
    unsigned corner_buffer_ = 0;
    std::vector<ShapeRecord> corners_; ///< each record once for each of its corners
    std::vector<std::uint32_t> order_; ///< of the corners, two triangles a shape
    int sheet_size_at_ = -1;
    int device_pixels_at_ = -1;
};

} // namespace steelyard::app
