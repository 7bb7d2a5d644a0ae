#include "setup/muscle/muscle_words.h"

#include "setup/muscle/muscle_file.h"

#include <array>

namespace steelyard::setup {
namespace {

using mechanics::Citation;
using mechanics::Evidence;
using mechanics::Hinge;
using mechanics::PoseRange;
using mechanics::TurnSense;

const std::vector<std::string_view> kMarks{"verified", "verified-2", "memory"};
const std::vector<std::string_view> kBases{"measured", "open model", "illustrative"};
/// No file of muscles has it: it comes with a setup.
constexpr std::string_view kGiven = "given by hand";

} // namespace

std::string_view mark_name(Evidence mark) {
    return kMarks[static_cast<std::size_t>(mark)];
}

std::string_view basis_name(mechanics::Basis basis) {
    if (basis == mechanics::Basis::given)
        return kGiven;
    return kBases[static_cast<std::size_t>(basis)];
}

const std::vector<std::string_view>& basis_names() {
    return kBases;
}

std::string labelled_source(const mechanics::ArmSource& source) {
    return source.citation.text + " (" + std::string(basis_name(source.basis)) + ')';
}

TurnWords turn_words(const std::optional<Hinge>& hinge) {
    if (!hinge)
        return {};
    return {mechanics::hinge_info(*hinge).positive, mechanics::hinge_info(*hinge).negative};
}

std::optional<double> read_sign(TomlReader& table, std::string_view key, const TurnWords& words,
                                Need need) {
    const auto word = table.choice(key, {words.positive, words.negative}, need);
    if (!word)
        return std::nullopt;
    return *word == 0 ? 1.0 : -1.0;
}

TurnSense sense_of(double sign) {
    return sign < 0.0 ? TurnSense::negative : TurnSense::positive;
}

std::optional<Hinge> read_hinge_name(TomlReader& table, Need need) {
    static const auto kHingeNames = names_without_side(mechanics::all_hinges());
    const auto hinge = table.choice("hinge", kHingeNames, need);
    return hinge ? named_without_side(kHingeNames[*hinge], mechanics::hinge_named) : std::nullopt;
}

std::vector<PoseRange> read_pose_ranges(TomlReader& table, std::string_view key) {
    std::vector<PoseRange> ranges;
    for (TomlReader& row : table.tables(key)) {
        const auto hinge = read_hinge_name(row, Need::required);
        const auto from = row.quantity("from", Dimension::angle, Need::required);
        const auto to = row.quantity("to", Dimension::angle, Need::required);
        if (hinge && from && to)
            ranges.push_back({*hinge, {from->value_SI, to->value_SI}});
        row.finish();
    }
    return ranges;
}

mechanics::Interval read_angles(TomlReader& table, std::string_view key) {
    const TomlNode* node = table.node(key, Need::required);
    const auto* array = node ? std::get_if<TomlArray>(&node->value) : nullptr;
    if (!array || array->items.size() != 2) {
        if (node)
            table.add_error(key, describe(*node), "two angles such as [\"0 deg\", \"140 deg\"]");
        return {};
    }
    std::array<double, 2> ends{};
    for (std::size_t i = 0; i < 2; ++i) {
        const std::string place = table.path_of(key) + "[" + std::to_string(i + 1) + "]";
        if (const auto end = table.quantity_of(array->items[i], place, Dimension::angle))
            ends[i] = end->value_SI;
    }
    return {ends[0], ends[1]};
}

Citation read_citation(TomlReader& table) {
    Citation citation;
    citation.text = table.text("source", Need::required).value_or("");
    if (const auto mark = table.choice("mark", kMarks, Need::required))
        citation.mark = static_cast<Evidence>(*mark);
    return citation;
}

} // namespace steelyard::setup
