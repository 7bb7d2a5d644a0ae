#pragma once
// Published tables of body segment parameters, as files: assets/body/*.toml. Each states its
// source.
//
//     name = "de Leva 1996"
//     source = "the full citation"
//     [female]                            # and [male], or one table [both]
//     reference_height = "1.735 m"        # left out: all lengths are fractions of stature
//     lumbar_height = "97.16 mm"          # and the other places, see mechanics::SegmentColumn
//     [female.head]                       # upper_arm, forearm, hand, thigh, shank, foot likewise
//     length = "243.7 mm"
//     mass = "6.68 %"                     # of body mass, one side
//     com = "48.41 %"                     # of the length, from the upper (foot: rear) end
//     gyration = { sagittal = "27.1 %", transverse = "29.5 %", longitudinal = "26.1 %" }
//     [[female.trunk]]                    # slices from the top down

#include "mechanics/body/segment_table.h"
#include "setup/toml/input_error.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::setup {

/// A table and the name by which setups choose it: that of its file without the ending.
struct NamedSegmentTable {
    std::string id; ///< "de_leva_1996"
    mechanics::SegmentTable table;
};

/// Table that is used when a setup names none.
inline constexpr std::string_view kUsualSegmentTable = "de_leva_1996";

tl::expected<mechanics::SegmentTable, InputError> parse_segment_table(std::string_view text,
                                                                      const std::string& file);

/// All tables of a folder, by name.
tl::expected<std::vector<NamedSegmentTable>, InputError>
read_segment_tables(const std::filesystem::path& folder);

/// The tables that come with the program.
tl::expected<std::vector<NamedSegmentTable>, InputError> shipped_segment_tables();

} // namespace steelyard::setup
