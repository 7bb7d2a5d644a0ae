#include "cli/ask_command.h"
#include "cli/bank_command.h"
#include "cli/draw_command.h"
#include "cli/exam_command.h"
#include "cli/export_command.h"
#include "cli/generate_command.h"
#include "cli/handout_command.h"
#include "cli/learn_command.h"
#include "cli/mark_command.h"
#include "cli/progress_command.h"
#include "cli/record_command.h"
#include "cli/solve_command.h"
#include "cli/verb.h"
#include "cli/whatif_command.h"

namespace steelyard::cli {

std::vector<Verb> all_verbs() {
    return {
        solve_verb(),    draw_verb(), figure_verb(),   whatif_verb(),  learn_verb(),
        quick_verb(),    exam_verb(), progress_verb(), record_verb(),  ask_verb(),
        generate_verb(), mark_verb(), bank_verb(),     handout_verb(), export_verb(),
    };
}

} // namespace steelyard::cli
