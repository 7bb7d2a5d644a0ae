#pragma once
// A body exercise as a file: reading, and writing back exactly. The format is taught in
// assets/setups/README.md.

#include "mechanics/muscle/muscle.h"
#include "mechanics/whatif/exercise.h"
#include "setup/body/body_view.h"
#include "setup/body/segment_table_file.h"
#include "setup/setup_head.h"

#include <tl/expected.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::setup {

/// A moment arm that stands in place of those on file, at every joint angle and on both sides.
struct GivenArm {
    std::string muscle; ///< by its name in assets/muscles/
    mechanics::Hinge hinge = mechanics::Hinge::right_elbow_flexion; ///< right side or middle
    double arm_m = 0.0; ///< signed like the hinge [m]; 0: the muscle does not turn it
};

/// Whose body it is.
struct Person {
    std::string name; ///< an invented member; may be empty
    mechanics::Sex sex = mechanics::Sex::female;
    double height_m = 1.70;
    double mass_kg = 65.0;
    std::string table{kUsualSegmentTable}; ///< id of the segment table
    std::vector<mechanics::MeasuredValue> measured;
    std::vector<GivenArm> arms;
};

/// An exercise with its introduction.
struct BodySetup {
    SetupHead head;
    Person person;
    mechanics::Exercise exercise; ///< its body is made from the person
    /// Hinges that could be called the axis of the exercise, the one it is meant for first.
    std::vector<mechanics::Hinge> axes;
    std::vector<std::string> muscles; ///< to show, by name; empty = those of the axes
    BodyView view = BodyView::side;
    SourceNotes source;
};

/// The body of a person by their segment table.
/// @return the body, or why it cannot be made: an unknown table (key "table"), an impossible height
tl::expected<mechanics::Body, mechanics::MechanicsError>
body_of(const Person& person, const std::vector<NamedSegmentTable>& tables);

/// The muscles with the arms that the person gives in place of those on file; a muscle that is not
/// given stays what it is.
/// @param hinge  the one that they turn, of either side
std::vector<mechanics::Muscle> with_given_arms(const Person& person,
                                               std::vector<mechanics::Muscle> muscles,
                                               mechanics::Hinge hinge);

/// Reads an exercise from a document of kind "body". A setup that is returned can be solved at
/// every place of its path.
tl::expected<BodySetup, InputError> body_setup_of(const TomlDocument& document,
                                                  const std::vector<NamedSegmentTable>& tables);

/// Reads an exercise from a text.
/// @param file  the name that errors are to give
tl::expected<BodySetup, InputError> parse_body_setup(std::string_view text, const std::string& file,
                                                     const std::vector<NamedSegmentTable>& tables);

/// The setup as the text of a file, exact like write_lever_setup.
std::string write_body_setup(const BodySetup& setup);

} // namespace steelyard::setup
