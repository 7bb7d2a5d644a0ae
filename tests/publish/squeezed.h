#pragma once

#include <string>
#include <string_view>

/// The text without any white space, thin and no-break spaces included: lines are broken anywhere.
inline std::string squeezed(std::string text) {
    for (const std::string_view space : {"\xC2\xA0", "\xE2\x80\x89", "\xE2\x80\xAF"})
        for (std::size_t at = 0; (at = text.find(space, at)) != std::string::npos;)
            text.erase(at, space.size());
    std::string kept;
    for (const char c : text)
        if (std::string_view(" \t\r\n\f").find(c) == std::string_view::npos)
            kept += c;
    return kept;
}
