#include "cli/reports/whatif_report.h"

#include "setup/units/format_quantity.h"
#include "words/caution.h"
#include "words/letter_case.h"
#include "words/whatif/gym_moves.h"
#include "words/whatif/whatif_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace steelyard::cli {
namespace {

using mechanics::Change;
using mechanics::ChangedPeak;
using mechanics::ChangeRange;
using mechanics::Limit;

std::string_view unit_name(mechanics::ChangeUnit unit) {
    constexpr std::array<std::string_view, 5> kNames{"kg", "N", "rad", "m", "s"};
    return kNames[static_cast<std::size_t>(unit)];
}

std::string_view outcome_word(mechanics::WhatIfOutcome outcome) {
    constexpr std::array<std::string_view, 3> kWords{"reached", "nearest_only", "nothing_allowed"};
    return kWords[static_cast<std::size_t>(outcome)];
}

Json limit_json(const std::optional<Limit>& limit) {
    if (!limit)
        return nullptr;
    Json json;
    json["kind"] = words::limit_word(limit->kind);
    json["joint"] = limit->hinge ? Json(mechanics::hinge_info(*limit->hinge).name) : Json();
    json["says"] = words::limit_phrase(*limit);
    return json;
}

Json peak_json(const std::optional<ChangedPeak>& at) {
    if (!at)
        return nullptr;
    return {
        {"value", at->value}, {"torque_Nm", at->peak.torque_Nm}, {"progress", at->peak.progress}};
}

/// @param asks  which of the three questions is answered
Json head_json(const WhatIfAsked& asked, std::string_view asks) {
    return {{"format", format_name("whatif")}, {"asks", asks}, {"name", asked.setup.head.name}};
}

Json asked_json(const WhatIfAsked& asked, std::string_view asks,
                const mechanics::PeakTorque& present) {
    Json json = head_json(asked, asks);
    json["joint"] = mechanics::hinge_info(asked.goal.wanted.hinge).name;
    json["wanted_torque_Nm"] = asked.goal.wanted.torque_Nm;
    json["present_torque_Nm"] = present.torque_Nm;
    return json;
}

Json change_json(const WhatIfAsked& asked, const Change& change, const ChangeRange& range) {
    Json json;
    json["change"] = words::change_word(change);
    json["of"] = describe(change, asked.exercise);
    json["unit"] = unit_name(range.unit);
    json["present_value"] = range.present;
    json["range"] = {range.allowed.low, range.allowed.high};
    return json;
}

std::string torque_text(const WhatIfAsked& asked, double torque_Nm) {
    return setup::format_quantity(std::abs(torque_Nm), setup::Dimension::torque,
                                  asked.setup.head.units);
}

std::string value_text(const WhatIfAsked& asked, double value, const ChangeRange& range) {
    return words::change_value_text(value, range.unit, asked.setup.head.units);
}

std::string step_text(const WhatIfAsked& asked, const Change& change, const ChangeRange& range,
                      double value) {
    return words::change_step_text(change, range, value, asked.setup.head.units);
}

/// "Crate far from the body: peak torque of lumbar flexion 180 N·m, wanted 144 N·m."
std::string question_lines(const WhatIfAsked& asked, double present_Nm) {
    return fmt::format(
        "{}\n  {}: {} now, {} wanted\n", asked.setup.head.name,
        fmt::format("Peak torque, {}", mechanics::hinge_info(asked.goal.wanted.hinge).label),
        torque_text(asked, present_Nm), torque_text(asked, asked.goal.wanted.torque_Nm));
}

std::string last_lines() {
    return fmt::format("\n{}\n", words::kCaution);
}

/// What comes nearest to the wanted torque and what stops it there, the nearest first.
std::string nearest_lines(const WhatIfAsked& asked, const mechanics::RankedWays& ways) {
    constexpr std::size_t kTold = 4;
    constexpr double kWorthTelling = 0.9; // of the way that is left; our own rule, no source
    const double wanted_Nm = std::abs(asked.goal.wanted.torque_Nm);
    const double present_Nm = std::abs(ways.present.torque_Nm);
    const auto miss_Nm = [&](const mechanics::RefusedWay& way) {
        return std::abs(std::abs(way.at->peak.torque_Nm) - wanted_Nm);
    };
    std::vector<const mechanics::RefusedWay*> nearer;
    for (const mechanics::RefusedWay& way : ways.refused)
        if (way.limit && way.at && miss_Nm(way) < kWorthTelling * std::abs(wanted_Nm - present_Nm))
            nearer.push_back(&way);
    std::stable_sort(nearer.begin(), nearer.end(),
                     [&](const auto* a, const auto* b) { return miss_Nm(*a) < miss_Nm(*b); });
    std::string text;
    for (std::size_t i = 0; i < std::min(kTold, nearer.size()); ++i) {
        const mechanics::RefusedWay& way = *nearer[i];
        const auto range = mechanics::range_of(way.change, asked.exercise);
        if (!range)
            continue;
        text += fmt::format("  {}, gives {}. It ends there: {}.\n",
                            words::gym_text(way.change, *range, way.at->value, asked.exercise,
                                            asked.setup.head.units),
                            torque_text(asked, way.at->peak.torque_Nm),
                            words::limit_phrase(*way.limit));
    }
    return text.empty() ? "Nothing comes nearer than the exercise as it is.\n"
                        : "What comes nearest:\n" + text;
}

} // namespace

Json answer_json(const WhatIfAsked& asked, const Change& change,
                 const mechanics::WhatIfAnswer& answer) {
    Json json = asked_json(asked, "change", answer.present);
    json.update(change_json(asked, change, answer.range));
    json["outcome"] = outcome_word(answer.outcome);
    json["solutions"] = Json::array();
    for (const ChangedPeak& solution : answer.solutions)
        json["solutions"].push_back(peak_json(solution));
    json["nearest"] = peak_json(answer.nearest);
    json["limit"] = limit_json(answer.limit);
    json["caution"] = words::kCaution;
    return json;
}

std::string answer_report(const WhatIfAsked& asked, const Change& change,
                          const mechanics::WhatIfAnswer& answer) {
    std::string text = question_lines(asked, answer.present.torque_Nm);
    const std::string what = words::capitalised(describe(change, asked.exercise));
    text +=
        fmt::format("\n{}: {} now.\n", what, value_text(asked, answer.range.present, answer.range));
    for (const ChangedPeak& solution : answer.solutions) {
        text += fmt::format("  {} gives it: {}.\n", value_text(asked, solution.value, answer.range),
                            step_text(asked, change, answer.range, solution.value));
    }
    if (answer.solutions.size() > 1)
        text += "  The first is the smallest change.\n";
    if (answer.limit) {
        text +=
            fmt::format("  {}\n", words::refusal_text(answer.nearest, *answer.limit,
                                                      answer.range.unit, asked.setup.head.units));
    }
    return text + last_lines();
}

Json ways_json(const WhatIfAsked& asked, const mechanics::RankedWays& ways) {
    Json json = asked_json(asked, "ways", ways.present);
    json["keep"] = asked.goal.keep
                       ? Json{{"joint", mechanics::hinge_info(asked.goal.keep->hinge).name},
                              {"within", asked.goal.keep->within}}
                       : Json();
    json["ways"] = Json::array();
    for (const mechanics::Way& way : ways.ways) {
        Json one = change_json(asked, way.change, way.range);
        one.update(peak_json(way.reached));
        one["keep_before_Nm"] = asked.goal.keep ? Json(way.keep_before_Nm) : Json();
        one["keep_after_Nm"] = asked.goal.keep ? Json(way.keep_after_Nm) : Json();
        one["size"] = way.size;
        one["says"] = words::gym_text(way.change, way.range, way.reached.value, asked.exercise,
                                      asked.setup.head.units);
        json["ways"].push_back(std::move(one));
    }
    json["refused"] = Json::array();
    for (const mechanics::RefusedWay& refused : ways.refused) {
        Json one;
        one["change"] = words::change_word(refused.change);
        one["of"] = describe(refused.change, asked.exercise);
        one["nearest"] = peak_json(refused.at);
        one["limit"] = limit_json(refused.limit);
        json["refused"].push_back(std::move(one));
    }
    json["caution"] = words::kCaution;
    return json;
}

std::string ways_report(const WhatIfAsked& asked, const mechanics::RankedWays& ways) {
    std::string text = question_lines(asked, ways.present.torque_Nm);
    const bool nothing_helps = ways.ways.empty() && ways.refused.empty();
    text += nothing_helps       ? "\nNo change of this exercise does anything to that torque.\n"
            : ways.ways.empty() ? "\nNo single change gives it.\n"
                                : "\nWhat a coach would try first stands first:\n";
    if (ways.ways.empty() && !nothing_helps)
        text += nearest_lines(asked, ways);
    int number = 0;
    for (const mechanics::Way& way : ways.ways) {
        text += fmt::format("  {}. {}.\n", ++number,
                            words::gym_text(way.change, way.range, way.reached.value,
                                            asked.exercise, asked.setup.head.units));
        if (asked.goal.keep) {
            text += fmt::format(
                "     {} {} instead of {}.\n", mechanics::hinge_info(asked.goal.keep->hinge).label,
                torque_text(asked, way.keep_after_Nm), torque_text(asked, way.keep_before_Nm));
        }
    }
    if (asked.goal.keep) {
        for (const mechanics::RefusedWay& refused : ways.refused) {
            if (!refused.limit) {
                text += fmt::format("  Not {}: {} would become {}.\n",
                                    words::gym_name(refused.change, asked.exercise),
                                    mechanics::hinge_info(asked.goal.keep->hinge).label,
                                    torque_text(asked, refused.keep_after_Nm));
            }
        }
    }
    return text + last_lines();
}

Json feasible_json(const WhatIfAsked& asked, const Change& change, const ChangeRange& range,
                   const std::vector<mechanics::AllowedSpan>& spans) {
    Json json = head_json(asked, "feasible");
    json.update(change_json(asked, change, range));
    json["caps"] = Json::array();
    for (const mechanics::Cap& cap : asked.goal.wanted.caps) {
        json["caps"].push_back(
            {{"joint", mechanics::hinge_info(cap.hinge).name}, {"most_Nm", cap.most_Nm}});
    }
    json["feasible"] = Json::array();
    for (const mechanics::AllowedSpan& span : spans) {
        json["feasible"].push_back({{"from", span.span.low},
                                    {"to", span.span.high},
                                    {"below", limit_json(span.below)},
                                    {"above", limit_json(span.above)}});
    }
    json["caution"] = words::kCaution;
    return json;
}

std::string feasible_report(const WhatIfAsked& asked, const Change& change,
                            const ChangeRange& range,
                            const std::vector<mechanics::AllowedSpan>& spans) {
    std::string text = fmt::format("{}\n\n{}: {} now.\n", asked.setup.head.name,
                                   words::capitalised(describe(change, asked.exercise)),
                                   value_text(asked, range.present, range));
    if (spans.empty())
        text += "  No setting keeps every cap.\n";
    for (const mechanics::AllowedSpan& span : spans) {
        text +=
            fmt::format("  From {} ({}) to {} ({}).\n", value_text(asked, span.span.low, range),
                        words::limit_phrase(span.below), value_text(asked, span.span.high, range),
                        words::limit_phrase(span.above));
    }
    return text + last_lines();
}

} // namespace steelyard::cli
