#include "cli/study/record_folder.h"

#include <algorithm>
#include <string_view>

namespace steelyard::cli {

namespace {

constexpr std::string_view kOption = "--data";

} // namespace

int leading_data_words(int argc, const char* const* argv) {
    const std::string_view first = argc > 1 ? argv[1] : "";
    if (first == kOption)
        return std::min(argc - 1, 2);
    return first.substr(0, kOption.size() + 1) == "--data=" ? 1 : 0;
}

CLI::Option* add_data_option(CLI::App& command, std::string& folder) {
    return command
        .add_option(std::string(kOption), folder, "folder of the record, if not the usual one")
        ->type_name("DIR")
        ->check([](const std::string& named) {
            return named.empty() ? std::string("is empty: name a folder, or leave --data out")
                                 : std::string();
        });
}

} // namespace steelyard::cli
