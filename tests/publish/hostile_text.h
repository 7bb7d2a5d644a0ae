#pragma once
// Text that breaks careless writers.

#include <string>
#include <vector>

inline std::vector<std::string> hostile_texts() {
    return {
        "<script>alert('x')</script>",
        "a & b < c > d \"quoted\" 'single' &amp; ]]> <!-- --",
        "שלום, עולם 12 N·m",            // right to left
        "قوة 40 نيوتن",                 // right to left, joined letters
        "🚣🏽‍♀️ lifts 5 kg", // several code points make one sign
        "e\xCC\x81"
        "effort", // a combining accent
        std::string("nul\0inside", 10),
        "bell\x07 escape\x1B tab\tline\nend\r",
        "broken \xC3\x28 \xE2\x82 \xF0\x9F end", // sequences cut short
        "\xED\xA0\x80 surrogate",                // not allowed in UTF-8
        "\xC0\xAF overlong slash",
        "\xEF\xBF\xBE noncharacter",
        "\xF4\x90\x80\x80 past the end",
        "\x80\xFF stray",
        std::string(5000, 'W'),
        "",
        " ",
    };
}
