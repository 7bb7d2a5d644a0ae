#include "problems/language/template_text.h"

#include <fmt/core.h>

namespace steelyard::problems {

tl::expected<TemplateText, std::string> TemplateText::parse(std::string_view text,
                                                            const Lookup& lookup) {
    TemplateText result;
    std::string plain;
    const auto close_plain = [&] {
        if (!plain.empty())
            result.pieces_.push_back({Piece::Is::plain, std::move(plain), 0});
        plain.clear();
    };
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (text[at] != '{') {
            plain += text[at];
            continue;
        }
        if (text.substr(at, 2) == "{{") {
            plain += '{';
            ++at;
            continue;
        }
        const std::size_t end = text.find('}', at);
        if (end == std::string_view::npos)
            return tl::make_unexpected(
                std::string("a placeholder is not closed: '}' is missing (a plain brace is '{{')"));
        std::string_view name = text.substr(at + 1, end - at - 1);
        constexpr std::string_view kBare = ":number";
        const bool bare =
            name.size() > kBare.size() && name.substr(name.size() - kBare.size()) == kBare;
        if (bare)
            name.remove_suffix(kBare.size());
        std::optional<Piece> piece = lookup(name);
        if (!piece)
            return tl::make_unexpected(fmt::format(
                "'{{{}}}' is neither a quantity of this family nor a word of its scene", name));
        if (bare && piece->is == Piece::Is::quantity)
            piece->is = Piece::Is::bare_quantity;
        close_plain();
        result.pieces_.push_back(std::move(*piece));
        at = end;
    }
    close_plain();
    return result;
}

std::string TemplateText::fill(const std::function<std::string(const Piece&)>& show) const {
    std::string result;
    for (const Piece& piece : pieces_)
        result += piece.is == Piece::Is::plain ? piece.text : show(piece);
    return result;
}

} // namespace steelyard::problems
