#include "app/place/library.h"

#include "setup/muscle_file.h"

namespace steelyard::app {

const Shelf& Library::levers() {
    if (!levers_)
        levers_ = read_shelf(data_folder_ / "assets" / "setups");
    return *levers_;
}

const Shelf& Library::exercises() {
    if (!exercises_)
        exercises_ = read_shelf(data_folder_ / "assets" / "setups" / "body");
    return *exercises_;
}

const tl::expected<std::vector<mechanics::Muscle>, std::string>& Library::muscles() {
    if (!muscles_)
        muscles_ = setup::shipped_muscles().map_error(
            [](const setup::InputError& error) { return setup::to_text(error); });
    return *muscles_;
}

const problems::Bank& Library::bank() {
    if (!bank_)
        bank_ = problems::load_bank(data_folder_ / "question_bank");
    return *bank_;
}

} // namespace steelyard::app
