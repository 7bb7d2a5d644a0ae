#include "setup/body/finish_movement.h"

#include "setup/body/touching.h"

#include <string_view>
#include <utility>

namespace steelyard::setup {
namespace {

using namespace mechanics;

/// Places of a path that are tried.
constexpr std::size_t kPlaces = 25;

/// Start and end must be poses that can be computed with.
tl::expected<void, MechanicsError> check_ends(const BodySetup& setup) {
    if (auto checked = check_case(setup.exercise.body_case); !checked)
        return checked;
    if (auto solved = solve_body(setup.exercise.body_case); !solved)
        return tl::make_unexpected(solved.error());
    if (!setup.exercise.path)
        return {};
    if (auto checked = check_way(setup.exercise.body_case, *setup.exercise.path); !checked) {
        MechanicsError error = checked.error();
        for (const auto& [told, written] :
             {std::pair<std::string_view, std::string_view>("end.pose.", "path."),
              {"halfway.pose.", "path.halfway."}})
            if (error.key.rfind(told, 0) == 0)
                error.key.replace(0, told.size(), written);
        return tl::make_unexpected(error);
    }
    return {};
}

} // namespace

std::optional<InputError> finish_movement(BodySetup& setup) {
    if (const auto checked = check_ends(setup); !checked)
        return placed_error(checked.error(), setup.source);
    if (auto error = keep_in_place(setup))
        return error;
    if (setup.exercise.path)
        if (const auto swept = sweep(setup.exercise.body_case, *setup.exercise.path, kPlaces);
            !swept)
            return placed_error(swept.error(), setup.source);
    return untouched_contact(setup);
}

} // namespace steelyard::setup
