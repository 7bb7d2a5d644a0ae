#include "cli/verb.h"

namespace steelyard::cli {

std::vector<Verb> all_verbs() {
    return {};
}

} // namespace steelyard::cli
