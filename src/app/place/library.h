#pragma once
// What comes with the program, each part read when it is first asked for, and what the person has
// kept.

#include "app/shelf/shelf.h"
#include "mechanics/muscle/muscle.h"
#include "problems/bank/bank.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

class Library {
public:
    /// @param data_folder  holds assets/ and question_bank/
    explicit Library(std::filesystem::path data_folder);

    const std::filesystem::path& data_folder() const { return data_folder_; }

    /// Setups of levers that are shipped.
    const LeverShelf& levers();
    /// Exercises that are shipped.
    const ExerciseShelf& exercises();
    /// Ways to stand, sit, lie and hang, from which an exercise is begun.
    const ExerciseShelf& stances();
    /// What the person has kept.
    const OwnSetups& own() const { return own_; }
    /// Tables of body segments that are shipped; none when they cannot be read.
    const std::vector<setup::NamedSegmentTable>& segment_tables();
    /// Muscles that are shipped, or a sentence saying why they cannot be had.
    const tl::expected<std::vector<mechanics::Muscle>, std::string>& muscles();
    /// The questions that come with the program, with the person's own beside them.
    const problems::Bank& bank();
    /// Where the body's numbers come from: a line for each source, as the data files state them;
    /// what is only remembered is said to be.
    const std::vector<std::string>& sources();

private:
    std::filesystem::path data_folder_;
    OwnSetups own_;
    std::optional<LeverShelf> levers_;
    std::optional<ExerciseShelf> exercises_;
    std::optional<ExerciseShelf> stances_;
    std::optional<std::vector<setup::NamedSegmentTable>> segment_tables_;
    std::optional<tl::expected<std::vector<mechanics::Muscle>, std::string>> muscles_;
    std::optional<problems::Bank> bank_;
    std::optional<std::vector<std::string>> sources_;
};

} // namespace steelyard::app
