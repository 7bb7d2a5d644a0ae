#include "cli/verbs/progress_command.h"

#include "cli/options/json_options.h"
#include "cli/reports/json_text.h"
#include "cli/reports/progress_text.h"
#include "cli/study/study.h"
#include "cli/study/terminal.h"
#include "learner/time/wall_clock.h"
#include "words/counted.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>
#include <ostream>

namespace steelyard::cli {

namespace {

struct ProgressOptions {
    LearnerOptions who;
    bool json = false;
};

constexpr int kRulesShown = 3;
constexpr int kExamsShown = 10;

/// All that progress says, from one moment.
struct Progress {
    learner::Clock now;
    std::vector<learner::Stair> stairs;
    learner::Readiness ready;
    learner::StudyPlan plan;
    std::vector<learner::RuleTimes> rules;
    std::vector<learner::ExamResult> exams;
};

Json stairs_json(const Study& study, const std::vector<learner::Stair>& stairs) {
    Json all = Json::array();
    for (const learner::Stair& stair : stairs) {
        const problems::Skill& skill = *study.course().skills[stair.skill].skill;
        all.push_back({{"skill", skill.id},
                       {"title", skill.title},
                       {"step", stair.level},
                       {"known", stair.known},
                       {"mastery", word_for(stair.mastery)},
                       {"open", stair.open},
                       {"due", stair.due},
                       {"answers", stair.answers},
                       {"right", stair.right}});
    }
    return all;
}

Json readiness_json(const Study& study, const learner::Readiness& ready) {
    Json shares = Json::array();
    for (const learner::SkillShare& share : ready.shares)
        shares.push_back({{"skill", study.course().skills[share.skill].skill->id},
                          {"questions", share.questions},
                          {"known", share.known},
                          {"expected", share.expected}});
    return {{"questions", ready.questions},
            {"pass", ready.pass},
            {"expected", ready.expected},
            {"low", ready.low},
            {"high", ready.high},
            {"holds", ready.holds},
            {"chance_to_pass", ready.chance_to_pass},
            {"answers", ready.answers},
            {"skills_tried", ready.skills_tried},
            {"touched", ready.touched},
            {"too_early", ready.is_too_early()},
            {"scores", ready.scores},
            {"shares", shares}};
}

Json progress_json(const Study& study, const Progress& progress) {
    Json exams = Json::array();
    for (const learner::ExamResult& exam : progress.exams)
        exams.push_back({{"title", exam.title},
                         {"day", learner::write_day(
                                     learner::day_of({exam.finished_ms, progress.now.offset_s}))},
                         {"right", exam.right},
                         {"of", exam.of},
                         {"pass", exam.pass},
                         {"used_s", exam.used_ms / learner::kSecond_ms}});
    Json rules = Json::array();
    for (const learner::RuleTimes& rule : progress.rules)
        rules.push_back({{"rule", rule.rule}, {"times", rule.times}});
    Json exam_day;
    if (study.standing.exam_day)
        exam_day = learner::write_day(*study.standing.exam_day);
    return {{"format", format_name("progress")},
            {"learner", study.learner.name},
            {"today", learner::write_day(learner::day_of(progress.now))},
            {"answers", study.standing.answers},
            {"exam_day", exam_day},
            {"plan",
             {{"days", progress.plan.days},
              {"questions_a_day", progress.plan.per_day},
              {"done_today", progress.plan.done_today},
              {"fits", progress.plan.fits}}},
            {"readiness", readiness_json(study, progress.ready)},
            {"skills", stairs_json(study, progress.stairs)},
            {"wrong_rules", rules},
            {"exams", exams}};
}

void show(const Study& study, const Progress& progress, const Streams& streams) {
    std::ostream& out = streams.out;
    out << fmt::format("{}, {} so far.\n", study.learner.name,
                       words::counted(study.standing.answers, "answer"));
    out << wrapped(say(progress.plan));
    out << staircase_text(study.course(), progress.stairs) << '\n';
    out << readiness_text(study.course(), study.standing, progress.ready, progress.exams);
    if (!progress.rules.empty())
        out << "\nWatch out for:\n";
    for (const learner::RuleTimes& rule : progress.rules) {
        const problems::WrongRule* known = study.shelf.bank->find_wrong_rule(rule.rule);
        out << wrapped(fmt::format("{} ({}). {}", known ? known->title : rule.rule,
                                   words::counted(rule.times, "time"),
                                   known ? known->feedback : ""),
                       "  ");
    }
    if (!progress.exams.empty())
        out << "\nMock exams:\n";
    for (const learner::ExamResult& exam : progress.exams)
        out << fmt::format(
            "  {}  {} of {}, {} needed: {}\n",
            learner::say_day(learner::day_of({exam.finished_ms, progress.now.offset_s}),
                             learner::usual_day_order()),
            exam.right, exam.of, exam.pass, exam.right >= exam.pass ? "passed" : "not passed");
}

ExitStatus progress(const ProgressOptions& options, const Streams& streams) {
    // What is said on the way there is no JSON.
    const Streams aside{streams.in, streams.err, streams.err};
    auto study = open_study(options.who, options.json ? aside : streams);
    if (!study)
        return study.error();
    Progress now;
    now.now = learner::wall_clock();
    now.stairs = staircase(study->course(), study->standing, now.now);
    now.ready = readiness(study->course(), study->standing, now.now.utc_ms);
    now.plan = plan_study(study->course(), study->standing, now.now);
    auto rules = study->record.frequent_rules(study->learner.id, kRulesShown);
    if (!rules)
        return tell(rules.error(), streams);
    now.rules = std::move(*rules);
    auto exams = finished_exams(study->record, study->learner.id, kExamsShown);
    if (!exams)
        return tell(exams.error(), streams);
    now.exams = std::move(*exams);
    if (options.json)
        streams.out << json_text(progress_json(*study, now));
    else
        show(*study, now, streams);
    return ExitStatus::ok;
}

Work add_progress_options(CLI::App& command) {
    auto options = std::make_shared<ProgressOptions>();
    add_json_option(command, options->json);
    add_learner_options(command, options->who);
    return [options](const Streams& streams) { return progress(*options, streams); };
}

} // namespace

Verb progress_verb() {
    return {"progress", "where you stand, and whether you would pass today",
            "  steelyard progress\n"
            "  steelyard progress --learner \"Ada\" --json",
            add_progress_options};
}

} // namespace steelyard::cli
