// Very many draws from the whole bank: nothing that a family or the engine refuses may come
// through.

#include "catch.h"
#include "problems/bank/bank.h"
#include "problems/draw/instance.h"

#include <cmath>

using namespace steelyard::problems;

namespace {

#ifdef NDEBUG
constexpr std::size_t kInstances = 1'000'000;
#else
constexpr std::size_t kInstances = 50'000; // unoptimised: what a working build waits for
#endif

bool all_finite(const std::vector<double>& values) {
    for (const double value : values)
        if (!std::isfinite(value))
            return false;
    return true;
}

/// What is wrong with an accepted instance; empty when nothing is.
std::string fault_of(const Instance& instance) {
    const Family& family = *instance.family;
    const double* const quantities = instance.quantities.data();
    if (!all_finite(instance.quantities))
        return "a quantity without a value";
    for (const auto* constraints : {&family.early_constraints, &family.constraints})
        for (const Constraint& constraint : *constraints)
            if (!constraint.holds.holds(quantities))
                return "against \"" + constraint.text + "\"";
    if (family.kind == Kind::numeric) {
        if (!std::isfinite(instance.answer) || !(instance.tolerance > 0.0))
            return "no answer";
        for (const double wrong : instance.wrong)
            if (!std::isnan(wrong) && std::abs(wrong - instance.answer) <= instance.tolerance)
                return "a wrong rule within tolerance of the answer";
    }
    if (family.kind == Kind::single_choice && instance.correct.size() != 1)
        return "not one right choice";
    if (family.kind == Kind::place && instance.correct.size() != 1)
        return "not one right place";
    return "";
}

} // namespace

TEST_CASE("of very many questions none breaks a rule") {
    const Bank bank = load_bank(std::string(STEELYARD_SOURCE_DIR) + "/question_bank");
    REQUIRE_FALSE(bank.families.empty());
    Instance instance;
    std::size_t faults = 0;
    for (std::size_t i = 0; i < kInstances; ++i) {
        const Family& family = bank.families[i % bank.families.size()];
        const Refusal refusal = draw_instance(family, mix(i, 1), instance);
        if (refusal != Refusal::none) {
            ++faults;
            UNSCOPED_INFO(family.id << ": " << describe(refusal));
        } else if (const std::string fault = fault_of(instance); !fault.empty()) {
            ++faults;
            UNSCOPED_INFO(family.id << ": " << fault);
        }
    }
    CHECK(faults == 0);
}
