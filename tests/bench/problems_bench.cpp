// How long questions take to make: a pool is made of hundreds of thousands.

#include "problems/bank/bank.h"
#include "problems/draw/instance.h"
#include "problems/marking/marking.h"
#include "problems/question/question_writer.h"

#include <benchmark/benchmark.h>
#include <string>

using namespace steelyard::problems;

namespace {

const std::string kBankFolder = std::string(STEELYARD_SOURCE_DIR) + "/question_bank";

const Bank& our_bank() {
    static const Bank bank = load_bank(kBankFolder);
    return bank;
}

/// Families of one kind of setup; written items cost nothing and are left out.
std::vector<const Family*> families(bool (*wanted)(const Family&)) {
    std::vector<const Family*> found;
    for (const Family& family : our_bank().families)
        if (family.items.empty() && wanted(family))
            found.push_back(&family);
    return found;
}

void draw(benchmark::State& state, const std::vector<const Family*>& from) {
    Instance instance;
    std::uint64_t i = 0;
    for (auto _ : state) {
        const Family& family = *from[i % from.size()];
        benchmark::DoNotOptimize(draw_instance(family, mix(i, 7), instance));
        ++i;
    }
    // Shown as questions a second.
    state.SetItemsProcessed(static_cast<std::int64_t>(state.iterations()));
}

/// Drawn, solved, and checked against every wrong rule.
void lever_question(benchmark::State& state) {
    draw(state, families([](const Family& family) { return family.lever.has_value(); }));
}
BENCHMARK(lever_question);

/// The same for bodies.
void body_question(benchmark::State& state) {
    draw(state, families([](const Family& family) { return family.body.has_value(); }));
}
BENCHMARK(body_question);

/// The same, written out with prompt, steps, choices and picture.
void written_question(benchmark::State& state) {
    const auto from = families([](const Family&) { return true; });
    Instance instance;
    std::uint64_t i = 0;
    for (auto _ : state) {
        draw_instance(*from[i % from.size()], mix(i, 7), instance);
        const Question question = write_question(our_bank(), instance);
        benchmark::DoNotOptimize(question.prompt.data());
        ++i;
    }
}
BENCHMARK(written_question);

void bank_load(benchmark::State& state) {
    for (auto _ : state) {
        const Bank bank = load_bank(kBankFolder);
        benchmark::DoNotOptimize(bank.families.data());
    }
}
BENCHMARK(bank_load)->Unit(benchmark::kMillisecond);

} // namespace
