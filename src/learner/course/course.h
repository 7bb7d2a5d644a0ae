#pragma once
// What there is to learn, as the learner's part of the program sees it: the skills of a bank with
// their families, what needs what, how much the exam asks of each, and the model's numbers. Made
// once when a bank is loaded; nothing in it changes after.

#include "learner/course/exam_blueprint.h"
#include "learner/model/parameters.h"
#include "learner/path/placement.h"
#include "problems/bank/bank.h"

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string_view>
#include <vector>

namespace steelyard::learner {

struct CourseSkill {
    const problems::Skill* skill = nullptr;
    std::vector<std::size_t> needs; ///< indices of the prerequisites, all smaller than its own
    /// That ask it, in the edition of the course's units; may be empty.
    std::vector<const problems::Family*> families;
    double weight = 0.0; ///< share of the exam; all add up to 1
    double guess = 0.1;  ///< mean over its families

    bool can_be_asked() const { return !families.empty(); }
};

struct Course {
    const problems::Bank* bank = nullptr; ///< must outlive the course
    Parameters parameters;
    ExamBlueprint exam;
    setup::UnitSystem units = setup::UnitSystem::si; ///< of its questions
    std::vector<CourseSkill> skills;                 ///< prerequisites before what needs them
    PlacementNetwork placement;

    std::optional<std::size_t> find(std::string_view skill_id) const;
};

/// Joins a bank, the parameters and an exam. Skills of the exam that the bank does not ask drop out
/// of the weights; when none is left, every skill that can be asked weighs the same. Takes a few
/// milliseconds.
Course make_course(const problems::Bank& bank, const Parameters& parameters,
                   const ExamBlueprint& exam, setup::UnitSystem units = setup::UnitSystem::si);

/// The same with the files of a folder: parameters.toml and mock-exam.exam.toml of assets/learner.
tl::expected<Course, setup::InputError>
load_course(const problems::Bank& bank, const std::filesystem::path& folder,
            setup::UnitSystem units = setup::UnitSystem::si);

} // namespace steelyard::learner
