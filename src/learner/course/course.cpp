#include "learner/course/course.h"

#include "learner/model/answer.h"

#include <algorithm>

namespace steelyard::learner {

namespace {

/// Ids of the bank's skills as indices of the course. A need that stands after the skill, or
/// nowhere, is a fault that the bank has reported; it is left out.
std::vector<std::size_t> needs_of(const Course& course, const problems::Skill& skill) {
    std::vector<std::size_t> needs;
    for (const std::string& need : skill.needs)
        if (const auto index = course.find(need))
            needs.push_back(*index);
    return needs;
}

double mean_guess(const CourseSkill& skill, const Parameters& parameters) {
    if (!skill.can_be_asked())
        return parameters.guess_typed;
    double sum = 0.0;
    for (const problems::Family* family : skill.families)
        sum += guess_rate(*family, parameters);
    return sum / static_cast<double>(skill.families.size());
}

void weigh(Course& course) {
    double sum = 0.0;
    for (const SkillWeight& weight : course.exam.weights)
        if (const auto index = course.find(weight.skill);
            index && course.skills[*index].can_be_asked()) {
            course.skills[*index].weight = weight.weight;
            sum += weight.weight;
        }
    if (!(sum > 0.0))
        for (CourseSkill& skill : course.skills)
            if (skill.can_be_asked()) {
                skill.weight = 1.0;
                sum += 1.0;
            }
    if (sum > 0.0)
        for (CourseSkill& skill : course.skills)
            skill.weight /= sum;
}

} // namespace

std::optional<std::size_t> Course::find(std::string_view skill_id) const {
    const auto found = std::find_if(skills.begin(), skills.end(), [&](const CourseSkill& known) {
        return known.skill->id == skill_id;
    });
    if (found == skills.end())
        return std::nullopt;
    return static_cast<std::size_t>(found - skills.begin());
}

Course make_course(const problems::Bank& bank, const Parameters& parameters,
                   const ExamBlueprint& exam, setup::UnitSystem units) {
    Course course;
    course.units = units;
    course.bank = &bank;
    course.parameters = parameters;
    course.exam = exam;
    std::vector<std::vector<std::size_t>> needs;
    for (const problems::Skill& skill : bank.skills) {
        CourseSkill known;
        known.skill = &skill;
        known.needs = needs_of(course, skill);
        for (const problems::Family& family : bank.families)
            if (family.skill == skill.id && problems::Bank::suits(family, units))
                known.families.push_back(&bank.in_units(family, units));
        known.guess = mean_guess(known, parameters);
        needs.push_back(known.needs);
        course.skills.push_back(std::move(known));
    }
    weigh(course);
    course.placement = PlacementNetwork(needs);
    return course;
}

tl::expected<Course, setup::InputError> load_course(const problems::Bank& bank,
                                                    const std::filesystem::path& folder,
                                                    setup::UnitSystem units) {
    const auto parameters = read_parameters(folder / "parameters.toml");
    if (!parameters)
        return tl::make_unexpected(parameters.error());
    const auto exam = read_exam_blueprint(folder / "mock-exam.exam.toml");
    if (!exam)
        return tl::make_unexpected(exam.error());
    return make_course(bank, *parameters, *exam, units);
}

} // namespace steelyard::learner
