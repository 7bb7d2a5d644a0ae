#pragma once
// Physical constants and the bounds beyond which an input cannot be meant. SI throughout:
// m, kg, N, N·m, rad, s.

namespace steelyard::mechanics {

inline constexpr double kPi = 3.14159265358979323846;

/// A degree [rad].
inline constexpr double kDegree_rad = kPi / 180.0;

/// Standard acceleration of free fall [m/s²], exact by definition.
/// Source: NIST SP 811 (2008), Appendix B.8, "acceleration of free fall, standard".
/// Some textbooks compute with 9.80: a check against such a book sets the book's value.
inline constexpr double kStandardGravity = 9.80665;

/// The inch [m] and the avoirdupois pound [kg], exact by definition, and the pound-force [N].
/// Source: NIST SP 811 (2008), Appendix B.8 and its footnotes.
inline constexpr double kInch_m = 0.0254;
inline constexpr double kPound_kg = 0.45359237;
inline constexpr double kPoundForce_N = kPound_kg * kStandardGravity;

/// Bounds of a believable input; beyond them the input is refused, not computed. Common sense, no
/// source: a kilometre of lever, a thousand tonnes, the weight of those.
inline constexpr double kMaxLength_m = 1.0e3;
inline constexpr double kMaxMass_kg = 1.0e6;
inline constexpr double kMaxForce_N = 1.0e7;
inline constexpr double kMaxTorque_Nm = 1.0e9;
inline constexpr double kMaxGravity_m_s2 = 1.0e3;

/// Two places closer than this are one place [m]: a tenth of a micrometre, far below what anyone
/// can measure on a lever and far above rounding error.
inline constexpr double kSamePlace_m = 1.0e-7;

} // namespace steelyard::mechanics
