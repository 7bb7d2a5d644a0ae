#pragma once
// The glossary: what the program's terms mean, what exams and books also call them, and a setup
// whose drawing shows each. The format is told at the head of assets/pages/glossary.toml.

#include "lesson/lesson.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::lesson {

struct Term {
    std::string name;
    std::vector<std::string> also;  ///< what it is also called
    std::vector<std::string> typed; ///< further spellings by which it is found
    std::string says;               ///< a sentence or two
    std::string formula;            ///< as on a formula sheet; may be empty
    std::string setup_name;         ///< whose drawing shows it; empty where none does
    StageMarks marks;               ///< of that drawing; empty = all
    std::string axis;               ///< of a body: the joint to look at
    std::string source;
    std::string skill; ///< id of the skill that teaches it; empty where none does
};

/// Reads a glossary; every setup that it names can be put on the stage.
tl::expected<std::vector<Term>, setup::InputError> read_glossary(const std::filesystem::path& path);

/// The terms whose name, other names or spellings hold a text, whatever its capitals; the
/// nearest first: whose name begins with it, then another of its names, then those that hold it.
/// All of them for an empty text.
std::vector<std::size_t> terms_with(const std::vector<Term>& terms, std::string_view text);

/// The stage that shows a term; empty where it has none.
/// @return the stage, or why the setup cannot be had
tl::expected<std::optional<LessonStage>, setup::InputError> stage_of(const Term& term);

/// What the drawing of a term leaves out: all marks but its own and the axis.
StageMarks left_out(const Term& term);

} // namespace steelyard::lesson
