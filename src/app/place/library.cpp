#include "app/place/library.h"

#include "app/own/own_files.h"
#include "setup/body/segment_table_file.h"
#include "setup/muscle/muscle_file.h"

namespace steelyard::app {

namespace {

/// "triceps, arm: Ramsay, Hunter & Gonzalez 2009 ..."; a source that is not seen says so in its
/// text.
void add_muscle_sources(const mechanics::Muscle& muscle, std::vector<std::string>& lines) {
    for (const mechanics::ArmSource& arm : muscle.arms)
        lines.push_back(muscle.name + ", arm: " + arm.citation.text);
    if (muscle.line)
        lines.push_back(muscle.name + ", attachments: " + muscle.line_citation.text);
}

} // namespace

Library::Library(std::filesystem::path data_folder)
    : data_folder_(std::move(data_folder)), own_(own_folder_of("setups")) {}

const LeverShelf& Library::levers() {
    if (!levers_)
        levers_ = read_levers(data_folder_ / "assets" / "setups");
    return *levers_;
}

const ExerciseShelf& Library::exercises() {
    if (!exercises_)
        exercises_ = read_exercises(data_folder_ / "assets" / "setups" / "body");
    return *exercises_;
}

const ExerciseShelf& Library::stances() {
    if (!stances_)
        stances_ = read_exercises(data_folder_ / "assets" / "stances");
    return *stances_;
}

const std::vector<setup::NamedSegmentTable>& Library::segment_tables() {
    if (!segment_tables_)
        segment_tables_ =
            setup::shipped_segment_tables().value_or(std::vector<setup::NamedSegmentTable>{});
    return *segment_tables_;
}

const tl::expected<std::vector<mechanics::Muscle>, std::string>& Library::muscles() {
    if (!muscles_)
        muscles_ = setup::shipped_muscles().map_error(
            [](const setup::InputError& error) { return setup::to_text(error); });
    return *muscles_;
}

const problems::Bank& Library::bank() {
    if (!bank_) {
        bank_ = problems::load_bank(data_folder_ / "question_bank");
        add_own_families(*bank_, problems::own_bank_folder());
    }
    return *bank_;
}

const std::vector<std::string>& Library::sources() {
    if (sources_)
        return *sources_;
    sources_.emplace();
    for (const setup::NamedSegmentTable& named : segment_tables())
        sources_->push_back("segments: " + named.table.source);
    if (const auto& known = muscles())
        for (const mechanics::Muscle& muscle : *known)
            add_muscle_sources(muscle, *sources_);
    return *sources_;
}

} // namespace steelyard::app
