#include "mechanics/body/published_tables.h"

namespace steelyard::mechanics {

namespace {

/// Places that the tables do not give, fractions of stature. From memory, but for the foot's
/// height and length (Drillis & Contini 1966).
void add_places(SegmentColumn& column, double height_m) {
    column.lumbar_height_m = 0.056 * height_m;
    column.hip_half_breadth_m = 0.05 * height_m;
    column.ankle_height_m = 0.039 * height_m;
    column.heel_behind_ankle_m = 0.25 * column.foot.length_m;
    column.ball_from_heel_m = 0.73 * column.foot.length_m;
}

SegmentColumn de_leva_female() {
    SegmentColumn f;
    f.reference_height_m = 1.735;
    f.head = {0.2437, 0.0668, 0.4841, {0.271, 0.261, 0.295}};
    f.trunk = {{0.1425, 0.1545, 0.2077, {0.746, 0.718, 0.502}},
               {0.2053, 0.1465, 0.4512, {0.433, 0.415, 0.354}},
               {0.1815, 0.1247, 0.4920, {0.433, 0.444, 0.402}}};
    f.upper_arm = {0.2751, 0.0255, 0.5754, {0.278, 0.148, 0.260}};
    f.forearm = {0.2643, 0.0138, 0.4559, {0.261, 0.094, 0.257}};
    f.hand = {0.0780, 0.0056, 0.7474, {0.531, 0.335, 0.454}};
    f.thigh = {0.3685, 0.1478, 0.3612, {0.369, 0.162, 0.364}};
    f.shank = {0.4386, 0.0481, 0.4352, {0.267, 0.092, 0.263}};
    f.foot = {0.2283, 0.0129, 0.4014, {0.139, 0.299, 0.279}};
    f.shoulder_height_m = 0.4979;
    f.neck_height_m = 0.6148;
    f.shoulder_half_breadth_m = 0.11 * f.reference_height_m;
    f.grip_from_wrist_m = 0.0780;
    f.fingertip_from_wrist_m = 0.1701;
    add_places(f, f.reference_height_m);
    return f;
}

SegmentColumn de_leva_male_column() {
    SegmentColumn m;
    m.reference_height_m = 1.741;
    m.head = {0.2429, 0.0694, 0.5002, {0.303, 0.261, 0.315}};
    m.trunk = {{0.1707, 0.1596, 0.2999, {0.716, 0.659, 0.454}},
               {0.2155, 0.1633, 0.4502, {0.482, 0.468, 0.383}},
               {0.1457, 0.1117, 0.6115, {0.615, 0.587, 0.551}}};
    m.upper_arm = {0.2817, 0.0271, 0.5772, {0.285, 0.158, 0.269}};
    m.forearm = {0.2689, 0.0162, 0.4574, {0.276, 0.121, 0.265}};
    m.hand = {0.0862, 0.0061, 0.7900, {0.628, 0.401, 0.513}};
    m.thigh = {0.4222, 0.1416, 0.4095, {0.329, 0.149, 0.329}};
    m.shank = {0.4403, 0.0433, 0.4395, {0.251, 0.102, 0.246}};
    m.foot = {0.2581, 0.0137, 0.4415, {0.124, 0.257, 0.245}};
    m.shoulder_height_m = 0.5155;
    m.neck_height_m = 0.6033;
    m.shoulder_half_breadth_m = 0.11 * m.reference_height_m;
    m.grip_from_wrist_m = 0.0862;
    m.fingertip_from_wrist_m = 0.1879;
    add_places(m, m.reference_height_m);
    return m;
}

SegmentColumn winter_column() {
    SegmentColumn w;
    w.reference_height_m = 1.0;
    // Head and neck from C7 (0.818) to the vertex; centre of mass at the ear canal (0.936).
    const double ear = (1.0 - 0.936) / 0.182;
    const double ear_radius = 0.495 * (0.936 - 0.818) / 0.182;
    w.head = {0.182, 0.0810, ear, {ear_radius, 0.261, ear_radius}};
    w.trunk = {{0.288, 0.4970, 0.500, {0.406, 0.191, 0.406}}};
    w.upper_arm = {0.186, 0.0280, 0.436, {0.322, 0.158, 0.322}};
    w.forearm = {0.146, 0.0160, 0.430, {0.303, 0.121, 0.303}};
    w.hand = {0.108, 0.0060, 0.506, {0.297, 0.184, 0.297}};
    w.thigh = {0.245, 0.1000, 0.433, {0.323, 0.149, 0.323}};
    w.shank = {0.246, 0.0465, 0.433, {0.302, 0.102, 0.302}};
    // Winter's foot runs from the ankle to the ball: its middle, as a fraction from heel to toe.
    const double from_ankle_to_ball = 0.73 - 0.25;
    const double foot_radius = 0.475 * from_ankle_to_ball;
    w.foot = {0.152, 0.0145, 0.25 + 0.5 * from_ankle_to_ball, {0.124, foot_radius, foot_radius}};
    w.shoulder_height_m = 0.288;
    w.neck_height_m = 0.288;
    w.shoulder_half_breadth_m = 0.1295;
    w.grip_from_wrist_m = 0.0496;
    w.fingertip_from_wrist_m = 0.108;
    add_places(w, 1.0);
    return w;
}

} // namespace

SegmentTable de_leva() {
    return {"de Leva 1996", "de Leva 1996, J Biomech 29(9):1223-1230, Table 4", de_leva_female(),
            de_leva_male_column()};
}

SegmentTable winter() {
    return {"Winter (Dempster)",
            "Winter, Biomechanics and Motor Control of Human Movement, Table 4.1; Drillis & "
            "Contini 1966",
            winter_column(), winter_column()};
}

Body winter_body() {
    return body_from(winter(), Sex::male, 1.75, 75.0).value();
}

Body de_leva_male() {
    return body_from(de_leva(), Sex::male, 1.741, 73.0).value();
}

BodyCase standing(const Body& body) {
    BodyCase body_case;
    body_case.body = body;
    return body_case;
}

double degrees(double angle_deg) {
    return angle_deg * kPi / 180.0;
}

} // namespace steelyard::mechanics
