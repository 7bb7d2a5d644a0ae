// All readers as one libFuzzer program; FUZZ_TARGET names which of them. See tests/fuzz/README.md.

#include "fuzz/targets.h"

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>

namespace {

const steelyard::fuzz::Target* wanted() {
    const char* name = std::getenv("FUZZ_TARGET");
    for (const steelyard::fuzz::Target& target : steelyard::fuzz::all_targets())
        if (name != nullptr && target.name == name)
            return &target;
    std::fprintf(stderr, "FUZZ_TARGET names none of the readers:");
    for (const steelyard::fuzz::Target& target : steelyard::fuzz::all_targets())
        std::fprintf(stderr, " %.*s", static_cast<int>(target.name.size()), target.name.data());
    std::fprintf(stderr, "\n");
    std::exit(2);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const steelyard::fuzz::Target* const kTarget = wanted();
    kTarget->take({reinterpret_cast<const char*>(data), size});
    return 0;
}
