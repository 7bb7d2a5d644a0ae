#include "app/paint/shape_painter.h"

#include "app/platform/gl.h"
#include "embedded/shaders.h"

#include <array>
#include <cstddef>
#include <utility>

namespace steelyard::app {

namespace {

/// One input of the vertex shader: name, floats, place in a ShapeRecord.
struct Attribute {
    const char* name;
    int floats;
    std::size_t offset;
};

constexpr Attribute kAttributes[] = {
    {"shape_centre", 2, offsetof(ShapeRecord, centre)},
    {"shape_half", 2, offsetof(ShapeRecord, half)},
    {"shape_turn", 2, offsetof(ShapeRecord, turn)},
    {"shape_form", 4, offsetof(ShapeRecord, form)},
    {"shape_form_more", 4, offsetof(ShapeRecord, form_more)},
    {"shape_colour", 4, offsetof(ShapeRecord, colour)},
    {"shape_kind", 1, offsetof(ShapeRecord, kind)},
};

/// Each shape is a rectangle of four corners and two triangles. Drawn as instances of one
/// rectangle, drivers without a graphics card spend more on each instance than on its pixels.
constexpr std::size_t kCorners = 4;
constexpr std::array<std::uint32_t, 6> kOrder{0, 1, 2, 2, 1, 3};

tl::expected<GLuint, std::string> compile(GLenum stage, std::string_view text) {
    const GLuint shader = glCreateShader(stage);
    const std::string source = kShaderHeader + std::string(text);
    const char* start = source.c_str();
    glShaderSource(shader, 1, &start, nullptr);
    glCompileShader(shader);
    GLint done = GL_FALSE;
    glGetShaderiv(shader, GL_COMPILE_STATUS, &done);
    if (done == GL_TRUE)
        return shader;
    char said[1024] = {};
    glGetShaderInfoLog(shader, sizeof said, nullptr, said);
    glDeleteShader(shader);
    return tl::unexpected(std::string("the graphics driver refused a shader: ") + said);
}

tl::expected<GLuint, std::string> link(GLuint vertex, GLuint fragment) {
    const GLuint program = glCreateProgram();
    glAttachShader(program, vertex);
    glAttachShader(program, fragment);
    for (GLuint i = 0; i < std::size(kAttributes); ++i)
        glBindAttribLocation(program, i, kAttributes[i].name);
    glLinkProgram(program);
    glDeleteShader(vertex);
    glDeleteShader(fragment);
    GLint done = GL_FALSE;
    glGetProgramiv(program, GL_LINK_STATUS, &done);
    if (done == GL_TRUE)
        return program;
    char said[1024] = {};
    glGetProgramInfoLog(program, sizeof said, nullptr, said);
    glDeleteProgram(program);
    return tl::unexpected(std::string("the graphics driver could not link the shaders: ") + said);
}

} // namespace

tl::expected<ShapePainter, std::string> ShapePainter::create() {
    const auto vertex = compile(GL_VERTEX_SHADER, shaders::kShapeVert);
    if (!vertex)
        return tl::unexpected(vertex.error());
    const auto fragment = compile(GL_FRAGMENT_SHADER, shaders::kShapeFrag);
    if (!fragment) {
        glDeleteShader(*vertex);
        return tl::unexpected(fragment.error());
    }
    const auto program = link(*vertex, *fragment);
    if (!program)
        return tl::unexpected(program.error());

    ShapePainter painter;
    painter.program_ = *program;
    painter.sheet_size_at_ = glGetUniformLocation(*program, "sheet_size");
    painter.device_pixels_at_ = glGetUniformLocation(*program, "device_pixels");
    glGenVertexArrays(1, &painter.vertex_array_);
    glGenBuffers(1, &painter.buffer_);
    glBindVertexArray(painter.vertex_array_);
    glBindBuffer(GL_ARRAY_BUFFER, painter.buffer_);
    glGenBuffers(1, &painter.corner_buffer_);
    glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, painter.corner_buffer_);
    for (GLuint i = 0; i < std::size(kAttributes); ++i) {
        glEnableVertexAttribArray(i);
        glVertexAttribPointer(i, kAttributes[i].floats, GL_FLOAT, GL_FALSE, sizeof(ShapeRecord),
                              reinterpret_cast<const void*>(kAttributes[i].offset));
    }
    glBindVertexArray(0);
    return painter;
}

ShapePainter::ShapePainter(ShapePainter&& other) noexcept {
    *this = std::move(other);
}

ShapePainter& ShapePainter::operator=(ShapePainter&& other) noexcept {
    std::swap(program_, other.program_);
    std::swap(vertex_array_, other.vertex_array_);
    std::swap(buffer_, other.buffer_);
    std::swap(corner_buffer_, other.corner_buffer_);
    std::swap(corners_, other.corners_);
    std::swap(order_, other.order_);
    std::swap(sheet_size_at_, other.sheet_size_at_);
    std::swap(device_pixels_at_, other.device_pixels_at_);
    return *this;
}

ShapePainter::~ShapePainter() {
    if (program_ == 0)
        return;
    glDeleteBuffers(1, &buffer_);
    glDeleteBuffers(1, &corner_buffer_);
    glDeleteVertexArrays(1, &vertex_array_);
    glDeleteProgram(program_);
}

void ShapePainter::upload(const std::vector<ShapeRecord>& records) {
    corners_.clear();
    for (const ShapeRecord& record : records)
        corners_.insert(corners_.end(), kCorners, record);
    glBindBuffer(GL_ARRAY_BUFFER, buffer_);
    glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(corners_.size() * sizeof(ShapeRecord)),
                 corners_.data(), GL_STREAM_DRAW);
    if (order_.size() >= kOrder.size() * records.size())
        return;
    for (std::size_t i = order_.size() / kOrder.size(); i < records.size(); ++i)
        for (const std::uint32_t corner : kOrder)
            order_.push_back(static_cast<std::uint32_t>(kCorners * i) + corner);
    glBufferData(GL_ELEMENT_ARRAY_BUFFER,
                 static_cast<GLsizeiptr>(order_.size() * sizeof(std::uint32_t)), order_.data(),
                 GL_STATIC_DRAW);
}

void ShapePainter::paint(const std::vector<ShapeRecord>& records, const scene::Point& sheet_px,
                         double device_pixels) {
    if (records.empty())
        return;
    glEnable(GL_BLEND);
    glBlendFunc(GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
    glUseProgram(program_);
    glUniform2f(sheet_size_at_, static_cast<float>(sheet_px.x()), static_cast<float>(sheet_px.y()));
    glUniform1f(device_pixels_at_, static_cast<float>(device_pixels));
    glBindVertexArray(vertex_array_);
    upload(records);
    glDrawElements(GL_TRIANGLES, static_cast<GLsizei>(kOrder.size() * records.size()),
                   GL_UNSIGNED_INT, nullptr);
    glBindVertexArray(0);
    glUseProgram(0);
}

} // namespace steelyard::app
