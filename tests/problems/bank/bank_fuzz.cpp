// Feeds mutated files to the readers of the bank, for libFuzzer: no expression and no family file,
// of levers or of bodies, may crash the program, run for ever or read beyond what it is given.
// Families that can be read are drawn from and written out as questions. Built with Clang only:
//   cmake --preset asan-clang -B build/fuzz -DCMAKE_CXX_FLAGS=-fsanitize=fuzzer-no-link
//   ninja -C build/fuzz bank_fuzz
//   build/fuzz/bin/bank_fuzz -max_total_time=600 -max_len=6000 NEW_FILES question_bank/families
// New inputs go to the first folder; the second is only read.

#include "problems/bank/bank_links.h"
#include "problems/bank/reading/family_reader.h"
#include "problems/draw/instance.h"
#include "problems/question/question_writer.h"
#include "setup/muscle/muscle_file.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <string>
#include <vector>

using namespace steelyard;

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t max_size);

namespace {

/// Skills and wrong rules of our bank, which a family refers to; no families.
const problems::Bank& rules_of_our_bank() {
    static const problems::Bank bank = [] {
        problems::Bank ours =
            problems::load_bank(std::string(STEELYARD_SOURCE_DIR) + "/question_bank");
        ours.families.clear();
        return ours;
    }();
    return bank;
}

void draw_and_write(const problems::Family& family) {
    if (!problems::faults_of_links(rules_of_our_bank(), family).empty())
        return;
    // A few draws: a family that refuses them all would else take most of the time.
    problems::Random random(1);
    problems::Instance instance;
    instance.family = &family;
    for (int i = 0; i < 4; ++i)
        if (problems::try_draw(family, random, instance) == problems::Refusal::none) {
            problems::write_question(rules_of_our_bank(), instance);
            return;
        }
}

/// A written family has nothing to draw: its first question.
void write_first(const problems::Family& family) {
    problems::Instance instance;
    if (problems::faults_of_links(rules_of_our_bank(), family).empty() && !family.items.empty() &&
        problems::draw_instance(family, 1, instance) == problems::Refusal::none)
        problems::write_question(rules_of_our_bank(), instance);
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

void read_as_family(const std::string& text) {
    const auto document = setup::parse_toml(text, "fuzz.toml");
    if (!document)
        return;
    static const problems::Published published{setup::shipped_segment_tables().value(),
                                               setup::shipped_muscles().value()};
    if (const auto family = problems::read_family(*document, published))
        draw_and_write(*family);
    if (const auto family = problems::read_items(*document))
        write_first(*family);
}

/// Values that a careless author might write.
constexpr std::array<std::string_view, 18> kValues{
    "0",     "-1",    "\"0\"",      "\"-1 m\"", "\"1 / 0\"", "\"1e308 kg\"",
    "\"\"",  "[]",    "{}",         "true",     "nan",       "\"400 deg\"",
    "\"g\"", "\"{\"", "\"1..0 m\"", "[[], {}]", "[\"\"]",    "\"0..1 m step 0\""};

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines(1);
    for (const char each : text)
        if (each == '\n')
            lines.emplace_back();
        else
            lines.back() += each;
    return lines;
}

/// What stands right of a line's equals sign; all of it when there is none.
std::string_view value_of(std::string_view line) {
    const std::size_t sign = line.find(" = ");
    return sign == std::string_view::npos ? line : line.substr(sign + 3);
}

/// Changes whole lines, so that most results are still TOML and reach beyond its parser.
std::string with_other_lines(const std::string& text, problems::Random& random) {
    std::vector<std::string> lines = lines_of(text);
    const std::size_t at = problems::draw_below(random, lines.size());
    const std::string other = lines[problems::draw_below(random, lines.size())];
    const auto position = lines.begin() + static_cast<std::ptrdiff_t>(at);
    std::string& line = lines[at];
    const std::string key = line.substr(0, line.size() - value_of(line).size());
    switch (problems::draw_below(random, 5)) {
    case 0:
        lines.erase(position);
        break;
    case 1:
        lines.insert(position, other);
        break;
    case 2:
        std::swap(line, lines[problems::draw_below(random, lines.size())]);
        break;
    case 3:
        line = key + std::string(value_of(other));
        break;
    default:
        line = key + std::string(kValues[problems::draw_below(random, kValues.size())]);
        break;
    }
    std::string result;
    for (const std::string& each : lines)
        result += each + '\n';
    return result;
}

} // namespace

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size,
                                               std::size_t max_size, unsigned int seed) {
    problems::Random random(seed);
    if (problems::draw_below(random, 3) == 0)
        return LLVMFuzzerMutate(data, size, max_size);
    const std::string changed =
        with_other_lines(std::string(reinterpret_cast<const char*>(data), size), random);
    const std::size_t kept = std::min(changed.size(), max_size);
    std::copy_n(changed.begin(), kept, reinterpret_cast<char*>(data));
    return kept;
}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text(reinterpret_cast<const char*>(data), size);
    read_as_expression(text);
    read_as_family(text);
    return 0;
}
