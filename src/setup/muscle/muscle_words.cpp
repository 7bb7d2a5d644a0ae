#include "setup/muscle/muscle_words.h"

#include "setup/muscle/muscle_file.h"

namespace steelyard::setup {
namespace {

using mechanics::Citation;
using mechanics::Evidence;
using mechanics::Hinge;
using mechanics::PoseRange;
using mechanics::TurnSense;

const std::vector<std::string_view> kMarks{"verified", "verified-2", "memory"};

} // namespace

std::string_view mark_name(Evidence mark) {
    return kMarks[static_cast<std::size_t>(mark)];
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

Citation read_citation(TomlReader& table) {
    Citation citation;
    citation.text = table.text("source", Need::required).value_or("");
    if (const auto mark = table.choice("mark", kMarks, Need::required))
        citation.mark = static_cast<Evidence>(*mark);
    return citation;
}

} // namespace steelyard::setup
