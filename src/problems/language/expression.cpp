#include "problems/language/expression.h"

#include "mechanics/portable.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace steelyard::problems {

namespace {

namespace portable = mechanics::portable;

/// Numbers this close, relative to the larger, are one number: far above rounding error in a chain
/// of conversions, far below the last digit of anything shown.
constexpr double kSameRelative = 1.0e-9;

bool same(double a, double b) {
    return std::abs(a - b) <= kSameRelative * std::max(std::abs(a), std::abs(b));
}

double truth(bool value) {
    return value ? 1.0 : 0.0;
}

} // namespace

double Expression::of_one(Op op, double a) {
    if (!std::isfinite(a))
        return std::numeric_limits<double>::quiet_NaN();
    switch (op) {
    case Op::negate:
        return -a;
    case Op::negated:
        return truth(a == 0.0);
    case Op::sine:
        return portable::sin(a);
    case Op::cosine:
        return portable::cos(a);
    case Op::tangent:
        return portable::tan(a);
    case Op::arcsine:
        return portable::asin(a);
    case Op::arccosine:
        return portable::acos(a);
    case Op::arctangent:
        return portable::atan(a);
    case Op::root:
        return std::sqrt(a);
    case Op::magnitude:
        return std::abs(a);
    case Op::rounded:
        return std::round(a);
    default:
        assert(op == Op::floor);
        return std::floor(a);
    }
}

double Expression::of_two(Op op, double a, double b) {
    // What has no value stays without one: a constraint on it must not hold by accident.
    if (!std::isfinite(a) || !std::isfinite(b))
        return std::numeric_limits<double>::quiet_NaN();
    switch (op) {
    case Op::add:
        return a + b;
    case Op::subtract:
        return a - b;
    case Op::multiply:
        return a * b;
    case Op::divide:
        return a / b;
    case Op::power:
        return portable::pow(a, b);
    case Op::less:
        return truth(a < b && !same(a, b));
    case Op::less_equal:
        return truth(a <= b || same(a, b));
    case Op::greater:
        return truth(a > b && !same(a, b));
    case Op::greater_equal:
        return truth(a >= b || same(a, b));
    case Op::equal:
        return truth(same(a, b));
    case Op::not_equal:
        return truth(!same(a, b));
    case Op::both:
        return truth(a != 0.0 && b != 0.0);
    case Op::either:
        return truth(a != 0.0 || b != 0.0);
    case Op::smaller:
        return std::min(a, b);
    default:
        assert(op == Op::larger);
        return std::max(a, b);
    }
}

double Expression::evaluate(const double* quantities) const {
    if (program_.empty())
        return std::numeric_limits<double>::quiet_NaN();
    double stack[kMaxStack]; // the parser refuses what would need more
    std::size_t top = 0;
    for (const Instruction& next : program_) {
        switch (next.takes) {
        case 0:
            stack[top++] = next.op == Op::number ? next.number : quantities[next.quantity];
            break;
        case 1:
            stack[top - 1] = of_one(next.op, stack[top - 1]);
            break;
        case 2:
            --top;
            stack[top - 1] = of_two(next.op, stack[top - 1], stack[top]);
            break;
        default:
            top -= 2;
            if (std::isfinite(stack[top - 1]))
                stack[top - 1] = stack[top - 1] != 0.0 ? stack[top] : stack[top + 1];
            break;
        }
    }
    assert(top == 1);
    return stack[0];
}

bool Expression::holds(const double* quantities) const {
    const double value = evaluate(quantities);
    return std::isfinite(value) && value != 0.0;
}

std::vector<std::uint16_t> Expression::reads() const {
    std::vector<std::uint16_t> result;
    for (const Instruction& instruction : program_)
        if (instruction.op == Op::quantity)
            result.push_back(instruction.quantity);
    std::sort(result.begin(), result.end());
    result.erase(std::unique(result.begin(), result.end()), result.end());
    return result;
}

} // namespace steelyard::problems
