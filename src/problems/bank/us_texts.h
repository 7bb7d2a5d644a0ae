#pragma once
// Texts of a family's file from SI into US customary units: what is drawn, units, sizes in words.

#include "setup/units/unit_table.h"

#include <functional>
#include <string>
#include <string_view>

namespace steelyard::problems {

/// Turns the texts of one file.
class UsTexts {
public:
    /// @param in_feet  lengths are told in feet instead of inches
    explicit UsTexts(bool in_feet) : in_feet_(in_feet) {}

    /// "cm" as "in"; what is no SI unit of ours stays.
    std::string unit(const std::string& symbol) const;
    /// "10..60 kg step 5" as "30..130 lb step 10".
    std::string draw(const std::string& text) const;
    /// Every size in a text, "20 cm nearer" as "8 in nearer", and units that are written out.
    std::string said(std::string_view text) const;
    /// The same numbers with other units: "5 kg hang 60 cm" as "5 lb hang 60 in". Metres are feet
    /// then, centimetres inches.
    std::string same_numbers(std::string_view text) const;
    /// What is nothing but a size: "9 cm".
    std::string size_alone(const std::string& text) const;
    /// Every "1 m" of a formula that stands for the unit itself: "stiffness / stretch * 1 m * 1 m".
    std::string unit_sizes(std::string_view text) const;

private:
    /// What is said for a value in an SI unit, told in this US unit.
    using Shown = std::function<std::string(double, const setup::Unit&, std::string_view)>;
    std::string with_sizes(std::string_view text, const Shown& shown) const;

    bool in_feet_;
};

} // namespace steelyard::problems
