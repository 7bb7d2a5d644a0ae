#include "catch.h"
#include "words/formula_parts.h"

using namespace steelyard::words;

namespace {

/// Indices in brackets.
std::string shown(std::string_view formula) {
    std::string text;
    for (const FormulaPart& part : formula_parts(formula))
        text += part.index ? "[" + part.text + "]" : part.text;
    return text;
}

} // namespace

TEST_CASE("what an underscore joins to a symbol is its index") {
    CHECK(shown("F_load × d_load = 441 N × 0.35 m") == "F[load] × d[load] = 441 N × 0.35 m");
    CHECK(shown("τ_1 + τ_2") == "τ[1] + τ[2]");
    CHECK(shown("torque_load,hip = max(a_1, 2)") == "torque[load,hip] = max(a[1], 2)");
}

TEST_CASE("an underscore that joins nothing stays") {
    CHECK(shown("_") == "_");
    CHECK(shown("_load") == "_load");
    CHECK(shown("F_") == "F_");
    CHECK(shown("F_ load") == "F_ load");
    CHECK(shown("") == "");
}
