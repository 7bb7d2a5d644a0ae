#pragma once
// What the rows of the builder say of an exercise.

#include "setup/body/body_setup.h"

#include <string>
#include <vector>

namespace steelyard::app {

/// "woman, 1.70 m, 64 kg"
std::string person_words(const setup::Person& person, setup::UnitSystem units);

/// "right foot", "right knee", "back": a part as one says what one stands or leans on.
std::string touching_word(mechanics::Segment segment, mechanics::Patch patch);

/// What carries the body: "both feet", "right foot, left toes", "a bench at the trunk".
std::string carried_words(const mechanics::Support& support);

/// How large a load is: "10 kg"; empty where no one number says so.
std::string size_words(const mechanics::Resistance& load, setup::UnitSystem units);

/// "holds still", "moves slowly", "2 s, hold 1 s, 2 s back"
std::string movement_words(const mechanics::Exercise& exercise);

/// Kinds of loads as one chooses them, in the order of resistance_kind_names: "dumbbell",
/// "plate machine".
std::vector<std::string> load_kind_words();

} // namespace steelyard::app
