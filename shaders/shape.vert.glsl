// Places one shape of a drawing on the sheet: a rectangle that just covers it, turned as it is.

in vec2 shape_centre;  // sheet px
in vec2 shape_half;    // half width and height of the covering rectangle, its own frame, px
in vec2 shape_turn;    // cosine and sine of its turn, clockwise on the sheet
in vec4 shape_form;    // what the fragment stage needs to know of its form, see there
in vec4 shape_form_more;
in vec4 shape_colour;  // straight alpha
in float shape_kind;

uniform vec2 sheet_size;     // sheet px
uniform float device_pixels; // framebuffer pixels per sheet px

out vec2 at;                 // position in the shape's own frame, px
flat out vec4 form;
flat out vec4 form_more;
flat out vec4 colour;
flat out float kind;

void main() {
    // Four vertices a shape: (-1,-1) (1,-1) (-1,1) (1,1).
    vec2 corner = vec2(float(gl_VertexID & 1), float((gl_VertexID >> 1) & 1)) * 2.0 - 1.0;
    // One device pixel of room on each side for the soft edge.
    at = corner * (shape_half + 1.0 / device_pixels);
    vec2 turned = vec2(at.x * shape_turn.x - at.y * shape_turn.y,
                       at.x * shape_turn.y + at.y * shape_turn.x);
    vec2 clip = (shape_centre + turned) / sheet_size * 2.0 - 1.0;
    gl_Position = vec4(clip.x, -clip.y, 0.0, 1.0);
    form = shape_form;
    form_more = shape_form_more;
    colour = shape_colour;
    kind = shape_kind;
}
