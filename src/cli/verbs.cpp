#include "cli/ask_command.h"
#include "cli/bank_command.h"
#include "cli/generate_command.h"
#include "cli/mark_command.h"
#include "cli/solve_command.h"
#include "cli/verb.h"

namespace steelyard::cli {

std::vector<Verb> all_verbs() {
    return {solve_verb(), ask_verb(), generate_verb(), mark_verb(), bank_verb()};
}

} // namespace steelyard::cli
