// Colours a shape by the signed distance to its edge, so that it is smooth at any size.

in vec2 at;
flat in vec4 form;
flat in vec4 form_more;
flat in vec4 colour;
flat in float kind;

uniform float device_pixels;

out vec4 painted;

// Distance to a box with rounded corners, half size b, corner radius r; negative inside.
float box_distance(vec2 p, vec2 b, float r) {
    vec2 q = abs(p) - b + r;
    return min(max(q.x, q.y), 0.0) + length(max(q, 0.0)) - r;
}

// Distance to a triangle about the centre of its inscribed circle, whose radius is given; negative
// inside. Each side is as far from there; outside the corners stay sharp. Sides within a larger form
// stand half a device pixel farther out: there they still cover all, so that no seam shows between
// neighbours. So that this draws out no sharp corner, nothing goes past the nearer end of the longest
// side. Packed: how far off that end is, and 4096 times a sum: 1, 2 and 4 for the sides within, 8
// where that end is at +x.
float triangle_distance(vec2 p, vec2 out_a, vec2 out_b, vec2 out_c, float radius, float packed_ends) {
    float sum = floor(packed_ends / 4096.0);
    float end = packed_ends - 4096.0 * sum;
    float half_pixel = 0.5 / device_pixels;
    vec3 is_within = mod(floor(sum * vec3(1.0, 0.5, 0.25)), 2.0);
    vec3 d = vec3(dot(p, out_a), dot(p, out_b), dot(p, out_c)) - is_within * half_pixel - radius;
    float past = (sum < 7.5 ? -p.x : p.x) - end - half_pixel;
    return max(max(d.x, d.y), max(d.z, past));
}

// Distance to a circular stroke about the origin: radius, half width, and the half angle that it
// spans to both sides of +x, with its cosine and sine; round ends.
float arc_distance(vec2 p, float radius, float half_width, float half_angle, vec2 end) {
    p.y = abs(p.y);
    float beyond = end.x * p.y - end.y * p.x; // > 0 past the end's direction
    bool past = half_angle < 3.14159 && (half_angle <= 1.5708 ? beyond > 0.0 || p.x < 0.0
                                                              : beyond > 0.0 && p.x < 0.0);
    float d = past ? length(p - end * radius) : abs(length(p) - radius);
    return d - half_width;
}

// Distance to a broken stroke along x: half length, half width, length of a dash without its round
// ends, gap. The first dash begins at the stroke's start; a dash of no length is a dot.
float dash_distance(vec2 p, float half_length, float half_width, float on, float gap) {
    float run = 2.0 * (half_length - half_width);
    float along = p.x + 0.5 * run;
    float period = on + gap;
    float last = floor(run / period + 1.0e-4);
    float low = clamp(round((along - 0.5 * on) / period), 0.0, last) * period;
    float high = min(low + on, run);
    return length(vec2(along - clamp(along, low, high), p.y)) - half_width;
}

// All of these are looked at for every pixel by drivers without a graphics card: what a shape's
// pixels share is computed before.
void main() {
    float d;
    if (kind < 0.5)      // filled box: half size, corner
        d = box_distance(at, form.xy, form.z);
    else if (kind < 1.5) // outline of a box: half size, corner, half width
        d = abs(box_distance(at, form.xy, form.z)) - form.w;
    else if (kind < 2.5) // triangle: directions out of its sides, radius of the inscribed circle,
                         // the nearer end and which sides lie within a form
        d = triangle_distance(at, form.xy, form.zw, form_more.xy, form_more.z, form_more.w);
    else if (kind < 3.5) // arc: radius, half width, half angle, its cosine and sine
        d = arc_distance(at, form.x, form.y, form.z, form_more.xy);
    else                 // dashes: half length, half width, dash, gap
        d = dash_distance(at, form.x, form.y, form.z, form.w);
    float cover = clamp(0.5 - d * device_pixels, 0.0, 1.0);
    painted = vec4(colour.rgb * colour.a, colour.a) * cover; // premultiplied
}
