#pragma once
// Keys of a keyboard by numbers of our own: the same on the desktop and in a page.

namespace steelyard::app::key {

// Keys that make a sign have its ASCII number, letters that of the capital; the others begin at
// 256. (GLFW counts so, and the desktop hands its numbers on; it asserts that they are the same.)
inline constexpr int kSpace = 32;
inline constexpr int kMinus = 45;
inline constexpr int k1 = 49;
inline constexpr int k2 = 50;
inline constexpr int k3 = 51;
inline constexpr int k4 = 52;
inline constexpr int k9 = 57;
inline constexpr int kEqual = 61;
inline constexpr int kA = 65;
inline constexpr int kB = 66;
inline constexpr int kC = 67;
inline constexpr int kD = 68;
inline constexpr int kE = 69;
inline constexpr int kF = 70;
inline constexpr int kG = 71;
inline constexpr int kH = 72;
inline constexpr int kK = 75;
inline constexpr int kL = 76;
inline constexpr int kM = 77;
inline constexpr int kN = 78;
inline constexpr int kO = 79;
inline constexpr int kP = 80;
inline constexpr int kQ = 81;
inline constexpr int kR = 82;
inline constexpr int kS = 83;
inline constexpr int kT = 84;
inline constexpr int kU = 85;
inline constexpr int kV = 86;
inline constexpr int kW = 87;
inline constexpr int kX = 88;
inline constexpr int kY = 89;
inline constexpr int kZ = 90;
inline constexpr int kEscape = 256;
inline constexpr int kEnter = 257;
inline constexpr int kTab = 258;
inline constexpr int kBackspace = 259;
inline constexpr int kInsert = 260;
inline constexpr int kDelete = 261;
inline constexpr int kRight = 262;
inline constexpr int kLeft = 263;
inline constexpr int kDown = 264;
inline constexpr int kUp = 265;
inline constexpr int kPageUp = 266;
inline constexpr int kPageDown = 267;
inline constexpr int kHome = 268;
inline constexpr int kEnd = 269;
inline constexpr int kF1 = 290;
inline constexpr int kF2 = 291;
inline constexpr int kF5 = 294;
inline constexpr int kF9 = 298;
inline constexpr int kF11 = 300;
inline constexpr int kF12 = 301;
inline constexpr int kKeypadSubtract = 333;
inline constexpr int kKeypadAdd = 334;
inline constexpr int kKeypadEnter = 335;

// Keys held beside another: bits.
inline constexpr int kWithShift = 1;
inline constexpr int kWithControl = 2;
inline constexpr int kWithAlt = 4;

} // namespace steelyard::app::key
