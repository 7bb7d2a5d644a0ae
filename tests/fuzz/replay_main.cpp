// Plays a corpus: every file as it is, and with changes that a seed decides. The same on every
// machine, and quick; for finding new inputs see libfuzzer_main.cpp.

#include "fuzz/targets.h"

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

std::string bytes_of(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

/// A few bytes changed, cut out, or put in from elsewhere in the text.
std::string changed(const std::string& text, std::mt19937& random) {
    std::string result = text;
    const auto below = [&](std::size_t end) {
        return end == 0 ? 0 : static_cast<std::size_t>(random()) % end;
    };
    const std::size_t times = 1 + below(4);
    for (std::size_t i = 0; i < times; ++i) {
        const std::size_t at = below(result.size() + 1);
        const std::size_t length = 1 + below(24);
        const std::size_t kind = below(4);
        if (kind == 0 && at < result.size())
            result[at] = static_cast<char>(below(256));
        else if (kind == 1)
            result.erase(at, length);
        else if (kind == 2) {
            const std::size_t from = below(text.size() + 1);
            result.insert(at, text.substr(from, length));
        } else {
            constexpr const char* kWords[] = {"1e999",
                                              "-",
                                              "nan",
                                              "\xE2\x80\xAE",
                                              "[[",
                                              "\"",
                                              "\n",
                                              "0.000000000000000000001 N",
                                              "99999999999999999999"};
            result.insert(at, kWords[below(std::size(kWords))]);
        }
    }
    return result;
}

/// A few of the files that come with the program, from the beginning of the alphabet to its end.
void add_shipped(const fs::path& folder, std::vector<fs::path>& files) {
    constexpr std::size_t kMost = 5;
    std::vector<fs::path> shipped;
    for (const auto& entry : fs::directory_iterator(folder))
        if (entry.path().extension() == ".toml")
            shipped.push_back(entry.path());
    std::sort(shipped.begin(), shipped.end());
    for (std::size_t i = 0; i < std::min(kMost, shipped.size()); ++i)
        files.push_back(shipped[i * shipped.size() / std::min(kMost, shipped.size())]);
}

} // namespace

/// fuzz_replay SOURCES [CHANGES]: so many changes of each file, 8 when not said.
int main(int argc, char** argv) {
    if (argc < 2)
        return 2;
    const fs::path sources = argv[1];
    const int changes = argc > 2 ? std::stoi(argv[2]) : 8;
    int played = 0;
    for (const steelyard::fuzz::Target& target : steelyard::fuzz::all_targets()) {
        std::vector<fs::path> files;
        const fs::path corpus = sources / "tests" / "fuzz" / "corpus" / target.name;
        for (const auto& entry : fs::directory_iterator(corpus))
            files.push_back(entry.path());
        std::sort(files.begin(), files.end());
        if (!target.shipped.empty())
            add_shipped(sources / target.shipped, files);
        if (files.empty()) {
            std::fprintf(stderr, "no corpus for %s\n", std::string(target.name).c_str());
            return 1;
        }
        for (const fs::path& file : files) {
            const std::string text = bytes_of(file);
            std::mt19937 random(static_cast<unsigned>(text.size()));
            for (int i = 0; i <= changes; ++i, ++played) {
                const std::string bytes = i == 0 ? text : changed(text, random);
                // Where it ends, the last input is what ended it.
                std::ofstream("fuzz_last_input", std::ios::binary) << bytes;
                target.take(bytes);
            }
        }
    }
    fs::remove("fuzz_last_input");
    std::printf("%d inputs to %zu readers\n", played, steelyard::fuzz::all_targets().size());
    return 0;
}
