#include "cli/verbs/ask_command.h"
#include "cli/verbs/bank_command.h"
#include "cli/verbs/calendar_command.h"
#include "cli/verbs/draw_command.h"
#include "cli/verbs/exam_command.h"
#include "cli/verbs/export_command.h"
#include "cli/verbs/generate_command.h"
#include "cli/verbs/glossary_command.h"
#include "cli/verbs/handout_command.h"
#include "cli/verbs/learn_command.h"
#include "cli/verbs/list_command.h"
#include "cli/verbs/mark_command.h"
#include "cli/verbs/progress_command.h"
#include "cli/verbs/record_command.h"
#include "cli/verbs/reference_command.h"
#include "cli/verbs/solve_command.h"
#include "cli/verbs/verb.h"
#include "cli/verbs/whatif_command.h"

namespace steelyard::cli {

std::vector<Verb> all_verbs() {
    return {
        solve_verb(),  draw_verb(),     figure_verb(),   whatif_verb(),    learn_verb(),
        quick_verb(),  exam_verb(),     progress_verb(), calendar_verb(),  record_verb(),
        ask_verb(),    generate_verb(), mark_verb(),     bank_verb(),      handout_verb(),
        export_verb(), list_verb(),     glossary_verb(), reference_verb(),
    };
}

} // namespace steelyard::cli
