#pragma once
// What a mock exam is made of: how many questions, how long, what is needed to pass, and how much
// each skill weighs. The format is taught in assets/learner/README.md.

#include "setup/toml/input_error.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::learner {

struct SkillWeight {
    std::string skill; ///< id
    double weight = 1.0;
};

struct ExamBlueprint {
    std::string title;
    int questions = 40;
    int minutes = 60;
    double pass_share = 0.7; ///< of the questions
    /// Whether a calculation may be typed where a number is asked: "70*0.4 + 50*1.2".
    bool calculator = true;
    std::vector<SkillWeight> weights;
};

tl::expected<ExamBlueprint, setup::InputError> parse_exam_blueprint(std::string_view text,
                                                                    const std::string& file);
tl::expected<ExamBlueprint, setup::InputError>
read_exam_blueprint(const std::filesystem::path& path);

/// Shares out so many questions by weight: each part gets its quota rounded down, what is left goes
/// to the largest remainders, earlier ones first among equals.
/// Source: method of largest remainder (Hamilton 1792; any text on apportionment).
/// @param weights  not negative, at least one positive
std::vector<int> share_out(const std::vector<double>& weights, int questions);

/// Questions needed to pass an exam of so many.
int pass_mark(double pass_share, int questions);

} // namespace steelyard::learner
