#include "app/build/build_numbers.h"

#include <algorithm>
#include <array>

namespace steelyard::app {

namespace {

using mechanics::Measure;
using mechanics::Segment;
using mechanics::TablePart;

struct MeasuredPart {
    TablePart part;
    Segment segment; ///< the one of the right side
    const char* name;
};
/// Lengths that a tape finds between joints that can be felt. The trunk's is that of the table's
/// whole trunk, of which the body has two segments.
constexpr std::array<MeasuredPart, 4> kMeasured{
    {{TablePart::upper_arm, Segment::right_upper_arm, "upper arm"},
     {TablePart::forearm, Segment::right_forearm, "forearm"},
     {TablePart::thigh, Segment::right_thigh, "thigh"},
     {TablePart::shank, Segment::right_shank, "lower leg"}}};

/// Parts whose mass can be given by itself. Head and trunk have no side.
constexpr std::array<MeasuredPart, 6> kWeighed{
    {{TablePart::upper_arm, Segment::right_upper_arm, "upper arm"},
     {TablePart::forearm, Segment::right_forearm, "forearm"},
     {TablePart::hand, Segment::right_hand, "hand"},
     {TablePart::thigh, Segment::right_thigh, "thigh"},
     {TablePart::shank, Segment::right_shank, "lower leg"},
     {TablePart::foot, Segment::right_foot, "foot"}}};

const MeasuredPart& measured_part(TablePart part) {
    const auto found = std::find_if(kWeighed.begin(), kWeighed.end(),
                                    [part](const MeasuredPart& one) { return one.part == part; });
    return found == kWeighed.end() ? kWeighed.front() : *found;
}

double mass_of(const mechanics::Body& body, TablePart part) {
    const double toes_kg = part == TablePart::foot ? body[Segment::right_toes].mass_kg : 0.0;
    return body[measured_part(part).segment].mass_kg + toes_kg;
}

mechanics::Tempo tempo_of(const setup::BodySetup& setup) {
    return setup.exercise.tempo.value_or(mechanics::kUsualTempo);
}

double& time_in(mechanics::Tempo& tempo, BuildField field) {
    return field == BuildField::out    ? tempo.out_s
           : field == BuildField::hold ? tempo.hold_s
                                       : tempo.back_s;
}

/// The person with a part measured, instead of what was measured of it before.
setup::Person with_measured(setup::Person person, TablePart part, Measure measure, double value) {
    auto& measured = person.measured;
    const auto old = std::find_if(measured.begin(), measured.end(), [&](const auto& one) {
        return one.part == part && one.measure == measure;
    });
    if (old == measured.end())
        measured.push_back({part, measure, value});
    else
        old->value = value;
    return person;
}

} // namespace

std::vector<BuildNumber> person_numbers() {
    std::vector<BuildNumber> numbers{{BuildField::height}, {BuildField::mass}};
    for (const MeasuredPart& one : kMeasured)
        numbers.push_back({BuildField::segment_length, one.part});
    return numbers;
}

std::vector<BuildNumber> part_mass_numbers() {
    std::vector<BuildNumber> numbers;
    for (const MeasuredPart& one : kWeighed)
        numbers.push_back({BuildField::segment_mass, one.part});
    return numbers;
}

std::vector<BuildNumber> tempo_numbers() {
    return {{BuildField::out}, {BuildField::hold}, {BuildField::back}};
}

double value_of(const setup::BodySetup& setup, const BuildNumber& number) {
    switch (number.field) {
    case BuildField::height:
        return setup.person.height_m;
    case BuildField::mass:
        return setup.person.mass_kg;
    case BuildField::segment_length:
        return setup.exercise.body_case.body[measured_part(number.part).segment].length_m;
    case BuildField::segment_mass:
        return mass_of(setup.exercise.body_case.body, number.part);
    case BuildField::out:
    case BuildField::hold:
    case BuildField::back:
        break;
    }
    mechanics::Tempo tempo = tempo_of(setup);
    return time_in(tempo, number.field);
}

setup::Dimension dimension_of(const BuildNumber& number) {
    switch (number.field) {
    case BuildField::height:
    case BuildField::segment_length:
        return setup::Dimension::length;
    case BuildField::mass:
    case BuildField::segment_mass:
        return setup::Dimension::mass;
    case BuildField::out:
    case BuildField::hold:
    case BuildField::back:
        break;
    }
    return setup::Dimension::time;
}

std::string name_of(const BuildNumber& number) {
    switch (number.field) {
    case BuildField::height:
        return "height";
    case BuildField::mass:
        return "mass";
    case BuildField::segment_length:
    case BuildField::segment_mass:
        return measured_part(number.part).name;
    case BuildField::out:
        return "to the end";
    case BuildField::hold:
        return "hold";
    case BuildField::back:
        return "back";
    }
    return {};
}

setup::ExerciseEdit with_number(const setup::BodySetup& setup, const BuildNumber& number,
                                double value_SI) {
    setup::Person person = setup.person;
    switch (number.field) {
    case BuildField::height:
        person.height_m = value_SI;
        return setup::ChangePerson{person};
    case BuildField::mass:
        person.mass_kg = value_SI;
        return setup::ChangePerson{person};
    case BuildField::segment_length:
        return setup::ChangePerson{with_measured(person, number.part, Measure::length_m, value_SI)};
    case BuildField::segment_mass:
        return setup::ChangePerson{with_measured(person, number.part, Measure::mass_kg, value_SI)};
    case BuildField::out:
    case BuildField::hold:
    case BuildField::back:
        break;
    }
    mechanics::Tempo tempo = tempo_of(setup);
    time_in(tempo, number.field) = value_SI;
    return setup::SetTempo{tempo};
}

} // namespace steelyard::app
