// Feeds random bytes to the readers of the bank, for libFuzzer: no expression and no family file
// may crash the program, run for ever or read beyond what it is given. Built with clang only:
//   cmake --preset asan-clang && cmake --build --preset asan-clang --target bank_fuzz

#include "problems/family_reader.h"
#include "problems/instance.h"
#include "setup/muscle_file.h"

#include <cstdint>
#include <string>

using namespace steelyard;

namespace {

void draw_some(const problems::Family& family) {
    problems::Random random(1);
    problems::Instance instance;
    instance.family = &family;
    for (int i = 0; i < 3; ++i)
        problems::try_draw(family, random, instance);
}

void read_as_expression(std::string_view text) {
    const double quantities[] = {1.5, -2.0, 0.0};
    const auto quantity_of = [](std::string_view name) -> std::optional<std::uint16_t> {
        if (name.size() == 1 && name[0] >= 'a' && name[0] <= 'c')
            return static_cast<std::uint16_t>(name[0] - 'a');
        return std::nullopt;
    };
    const auto unit_of = [](std::string_view unit) -> std::optional<double> {
        if (unit == "m")
            return 1.0;
        return std::nullopt;
    };
    const auto parsed = problems::parse_expression(text, quantity_of, unit_of);
    if (parsed)
        parsed->evaluate(quantities);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size < 1)
        return 0;
    const std::string text(reinterpret_cast<const char*>(data + 1), size - 1);
    if (data[0] % 2 == 0) {
        read_as_expression(text);
        return 0;
    }
    const auto document = setup::parse_toml(text, "fuzz.toml");
    if (!document)
        return 0;
    static const problems::Published published{setup::shipped_segment_tables().value(),
                                               setup::shipped_muscles().value()};
    if (const auto family = problems::read_family(*document, published))
        draw_some(*family);
    if (const auto family = problems::read_items(*document))
        draw_some(*family);
    return 0;
}
