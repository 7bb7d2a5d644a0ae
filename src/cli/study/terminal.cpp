#include "cli/study/terminal.h"

#include <algorithm>
#include <cmath>
#include <iostream>
#include <random>
#include <sys/ioctl.h>
#include <unistd.h>

namespace steelyard::cli {

std::size_t columns_of(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
    }));
}

std::string wrapped(const std::string& text, const std::string& indent) {
    std::string result = indent;
    std::size_t column = indent.size();
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const std::size_t width = columns_of(std::string_view(text).substr(at, end - at));
        if (column > indent.size() && column + 1 + width > kColumns) {
            result += "\n" + indent;
            column = indent.size();
        } else if (column > indent.size()) {
            result += ' ';
            ++column;
        }
        result += text.substr(at, end - at);
        column += width;
        at = end + 1;
    }
    return result + "\n";
}

bool read_line(const Streams& streams, std::string_view prompt, std::string& line) {
    streams.out << prompt << ": " << std::flush;
    if (!std::getline(streams.in, line))
        return false;
    while (!line.empty() && (line.back() == '\r' || line.back() == ' '))
        line.pop_back();
    return true;
}

int terminal_columns(const std::ostream& out) {
    constexpr int kFewest = 40;
    constexpr int kMost = 132;
    winsize size{};
    if (&out != &std::cout || isatty(STDOUT_FILENO) == 0 ||
        ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 || size.ws_col == 0)
        return kColumns;
    return std::clamp<int>(size.ws_col, kFewest, kMost);
}

bool can_answer(const Streams& streams) {
    return &streams.in != &std::cin || isatty(STDIN_FILENO) != 0;
}

std::string bar(double share, std::size_t columns) {
    const auto filled = static_cast<std::size_t>(
        std::lround(std::clamp(share, 0.0, 1.0) * static_cast<double>(columns)));
    return std::string(filled, '#') + std::string(columns - filled, '.');
}

std::uint64_t any_seed() {
    std::random_device device;
    return (static_cast<std::uint64_t>(device()) << 32U) ^ device();
}

} // namespace steelyard::cli
