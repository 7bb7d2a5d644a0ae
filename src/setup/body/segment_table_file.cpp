#include "setup/body/segment_table_file.h"

#include "setup/files/data_folder.h"
#include "setup/files/folder.h"
#include "setup/toml/toml_reader.h"

#include <algorithm>

namespace steelyard::setup {
namespace {

using mechanics::SegmentColumn;
using mechanics::SegmentRow;

/// Reads one column; lengths have a unit, or are fractions where no reference height is stated.
class ColumnReader {
public:
    explicit ColumnReader(TomlReader& table)
        : table_(table), fractions_(!table.has("reference_height")) {}

    SegmentColumn read() {
        SegmentColumn column;
        column.reference_height_m = fractions_ ? 1.0 : length(table_, "reference_height");
        column.head = row("head");
        for (TomlReader& slice : table_.tables("trunk", Need::required)) {
            column.trunk.push_back(row_of(slice, false));
            slice.finish();
        }
        column.upper_arm = row("upper_arm");
        column.forearm = row("forearm");
        column.hand = row("hand");
        column.thigh = row("thigh");
        column.shank = row("shank");
        column.foot = row("foot");
        column.lumbar_height_m = length(table_, "lumbar_height");
        column.shoulder_height_m = length(table_, "shoulder_height");
        column.neck_height_m = length(table_, "neck_height");
        column.shoulder_half_breadth_m = length(table_, "shoulder_half_breadth");
        column.hip_half_breadth_m = length(table_, "hip_half_breadth");
        column.ankle_height_m = length(table_, "ankle_height");
        column.heel_behind_ankle_m = length(table_, "heel_behind_ankle");
        column.ball_from_heel_m = length(table_, "ball_from_heel");
        column.grip_from_wrist_m = length(table_, "grip_from_wrist");
        column.fingertip_from_wrist_m = length(table_, "fingertip_from_wrist");
        table_.finish();
        return column;
    }

private:
    double length(TomlReader& from, std::string_view key) const {
        const auto value =
            from.quantity(key, fractions_ ? Dimension::number : Dimension::length, Need::required);
        return value ? value->value_SI : 0.0;
    }

    SegmentRow row_of(TomlReader& from, bool is_foot) const {
        SegmentRow result;
        result.length_m = length(from, "length");
        result.mass_fraction = from.number("mass", Need::required).value_or(0.0);
        result.com_fraction = from.number("com", Need::required).value_or(0.0);
        if (auto radii = from.table("gyration", Need::required)) {
            const double sagittal = radii->number("sagittal", Need::required).value_or(0.0);
            const double transverse = radii->number("transverse", Need::required).value_or(0.0);
            const double longitudinal = radii->number("longitudinal", Need::required).value_or(0.0);
            // The foot's long axis points forward, all others' up.
            result.gyration = is_foot ? mechanics::Vec3(longitudinal, sagittal, transverse)
                                      : mechanics::Vec3(sagittal, longitudinal, transverse);
            radii->finish();
        }
        return result;
    }

    SegmentRow row(std::string_view key) {
        auto from = table_.table(key, Need::required);
        if (!from)
            return {};
        const SegmentRow result = row_of(*from, key == "foot");
        from->finish();
        return result;
    }

    TomlReader& table_;
    bool fractions_;
};

tl::expected<mechanics::SegmentTable, InputError> table_of(const TomlDocument& document) {
    InputErrors errors;
    TomlReader top(document, errors);
    mechanics::SegmentTable table;
    table.name = top.short_text("name", Need::required).value_or("");
    table.source = top.text("source", Need::required).value_or("");
    if (top.has("both")) {
        if (auto both = top.table("both"))
            table.female = table.male = ColumnReader(*both).read();
    } else {
        if (auto female = top.table("female", Need::required))
            table.female = ColumnReader(*female).read();
        if (auto male = top.table("male", Need::required))
            table.male = ColumnReader(*male).read();
    }
    top.finish();
    if (!errors.empty())
        return tl::make_unexpected(first_of(errors));
    return table;
}

} // namespace

tl::expected<mechanics::SegmentTable, InputError> parse_segment_table(std::string_view text,
                                                                      const std::string& file) {
    return parse_toml(text, file).and_then(table_of);
}

tl::expected<std::vector<NamedSegmentTable>, InputError>
read_segment_tables(const std::filesystem::path& folder) {
    const auto paths = files_ending(folder, ".toml");
    if (!paths)
        return tl::make_unexpected(paths.error());
    std::vector<NamedSegmentTable> tables;
    for (const std::filesystem::path& path : *paths) {
        auto table = read_toml_file(path).and_then(table_of);
        if (!table)
            return tl::make_unexpected(table.error());
        tables.push_back({path.stem().string(), *std::move(table)});
    }
    return tables;
}

tl::expected<std::vector<NamedSegmentTable>, InputError> shipped_segment_tables() {
    return read_segment_tables(data_folder() / "assets" / "body");
}

} // namespace steelyard::setup
