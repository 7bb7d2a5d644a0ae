#pragma once
// Places and directions in space, as files write them: { forward = "40 cm", up = "1.2 m" }, and
// places on the body: { segment = "right_shank", along = 0.9 }.

#include "mechanics/body/body.h"
#include "setup/setup_head.h"

#include <string>
#include <string_view>

namespace steelyard::setup {

/// A table of a file whose quantities are noted under the keys of mechanics.
struct NotedTable {
    TomlReader& table;
    SourceNotes& source;
    std::string prefix; ///< of its keys in mechanics: "resistances[0]"; may be empty

    std::string key_of(std::string_view key) const;
    double quantity(std::string_view key, Dimension dimension, double otherwise,
                    Need need = Need::optional, bool mass_as_force = false) const;
    /// Notes where a table or list stands, for errors about the whole of it.
    void note_place(std::string_view key) const;
};

/// A place or an arrow in the world [m]; parts that are not written are 0.
mechanics::Vec3 read_place(const NotedTable& in, std::string_view key, Need need);

/// A direction: "up", "down", "forward", "backward", "left", "right", or its parts as numbers,
/// { forward = 1, up = 0.5 }.
mechanics::Vec3 read_direction(const NotedTable& in, std::string_view key,
                               const mechanics::Vec3& otherwise, Need need = Need::optional);

/// A place on the body: its segment, a spot or a fraction along it, and an offset.
mechanics::BodyPoint read_body_point(const NotedTable& in, std::string_view key,
                                     const mechanics::BodyPoint& otherwise,
                                     Need need = Need::optional);

/// True when the key's table names a segment, so that it is a place on the body.
bool is_on_body(const TomlReader& table, std::string_view key);

/// The same as right sides of lines of TOML.
std::string written_place(const mechanics::Vec3& place_m, const std::string& mechanics_key,
                          const SourceNotes& source, std::string_view unit);
std::string written_direction_in_space(const mechanics::Vec3& direction);
std::string written_body_point(const mechanics::BodyPoint& point, const std::string& mechanics_key,
                               const SourceNotes& source, std::string_view unit);

} // namespace steelyard::setup
