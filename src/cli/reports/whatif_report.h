#pragma once
// Answers of what-if for a terminal and for another program.

#include "cli/options/whatif_question.h"
#include "cli/reports/json_text.h"
#include "setup/body/body_setup.h"

#include <string>
#include <vector>

namespace steelyard::cli {

/// One question, as asked and understood.
struct WhatIfAsked {
    const setup::BodySetup& setup;
    const mechanics::Exercise& exercise;
    mechanics::Goal goal;
};

/// The answer for one change. Numbers in SI, angles in rad; what does not exist is null.
Json answer_json(const WhatIfAsked& asked, const mechanics::Change& change,
                 const mechanics::WhatIfAnswer& answer);
std::string answer_report(const WhatIfAsked& asked, const mechanics::Change& change,
                          const mechanics::WhatIfAnswer& answer);

/// Every change that does it, smallest first, and those that do not.
Json ways_json(const WhatIfAsked& asked, const mechanics::RankedWays& ways);
std::string ways_report(const WhatIfAsked& asked, const mechanics::RankedWays& ways);

/// What settings of a change keep every cap.
Json feasible_json(const WhatIfAsked& asked, const mechanics::Change& change,
                   const mechanics::ChangeRange& range,
                   const std::vector<mechanics::AllowedSpan>& spans);
std::string feasible_report(const WhatIfAsked& asked, const mechanics::Change& change,
                            const mechanics::ChangeRange& range,
                            const std::vector<mechanics::AllowedSpan>& spans);

} // namespace steelyard::cli
