#pragma once
// One include for Catch2 v2 (Debian 12, Ubuntu 24.04) and v3 (Debian 13).
#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
using Catch::Approx;
using Catch::Matchers::ContainsSubstring;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
#else
#include <catch2/catch.hpp>
using Catch::WithinAbs;
using Catch::WithinRel;
inline auto ContainsSubstring(const std::string& part) {
    return Catch::Contains(part);
}
#endif
