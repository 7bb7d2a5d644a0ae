#include "publish/figures/text_lines.h"

#include "scene/marks/text_width.h"

#include <algorithm>

namespace steelyard::publish {

namespace {

/// Where the word that begins at a place ends. A per cent sign stays with its number.
std::size_t end_of_word(std::string_view text, std::size_t from) {
    std::size_t to = text.find(' ', from);
    while (to != std::string_view::npos && text.substr(to + 1, 1) == "%")
        to = text.find(' ', to + 1);
    return std::min(to, text.size());
}

} // namespace

std::vector<std::string> broken_into_lines(std::string_view text, scene::TextSize size,
                                           double width_px) {
    std::vector<std::string> lines{""};
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t to = end_of_word(text, from);
        const std::string word(text.substr(from, to - from));
        std::string longer = lines.back();
        longer.append(longer.empty() ? "" : " ").append(word);
        const bool fits = scene::text_width_px(longer, size, false, 1.0) <= width_px;
        if (fits || lines.back().empty())
            lines.back() = std::move(longer);
        else
            lines.push_back(word);
        from = to + 1;
    }
    return lines;
}

std::string cut_to_width(const std::string& text, scene::TextSize size, bool strong,
                         double width_px) {
    const auto fits = [&](const std::string& line) {
        return scene::text_width_px(line, size, strong, 1.0) <= width_px;
    };
    std::string cut = text;
    while (!fits(cut == text ? cut : cut + " …")) {
        const std::size_t blank = cut.rfind(' ');
        if (blank == std::string::npos)
            break;
        cut.erase(blank);
    }
    return cut == text ? cut : cut + " …";
}

} // namespace steelyard::publish
