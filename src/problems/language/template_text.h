#pragma once
// Text with placeholders: "You hang {load_mass} on the {lever}."
// A placeholder is a quantity (shown with its unit; "{load_mass:number}" without) or a word of the
// family's scene. "{{" is a plain brace.

#include <tl/expected.hpp>

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::problems {

class TemplateText {
public:
    struct Piece {
        enum class Is { plain, quantity, bare_quantity, word } is = Is::plain;
        std::string text;        ///< plain text
        std::uint16_t index = 0; ///< of the quantity or the scene's word
    };

    /// What a placeholder's name stands for; empty = nothing.
    using Lookup = std::function<std::optional<Piece>(std::string_view name)>;

    /// @return the template, or a sentence on what is wrong with it
    static tl::expected<TemplateText, std::string> parse(std::string_view text,
                                                         const Lookup& lookup);

    /// The text with every placeholder replaced by what `show` returns for it.
    std::string fill(const std::function<std::string(const Piece&)>& show) const;

    const std::vector<Piece>& pieces() const { return pieces_; }
    bool empty() const { return pieces_.empty(); }

private:
    std::vector<Piece> pieces_;
};

} // namespace steelyard::problems
