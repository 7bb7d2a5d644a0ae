// The one program: a window when nothing or a file is named, else the command line.

#include "app/run.h"
#include "cli/command_line.h"
#include "cli/window_request.h"
#include "paint/paint_tools.h"
#include "setup/files/data_folder.h"

#include <iostream>

namespace {

int open_window(int argc, char** argv) {
    const auto request = steelyard::cli::read_window_request(argc, argv);
    if (!request) {
        std::cerr << request.error() << "\nSee `steelyard --help`.\n";
        return 2;
    }
    steelyard::app::RunOptions options;
    options.data_folder = steelyard::setup::data_folder();
    options.file = request->file;
    options.tools = steelyard::paint::paint_tools();
    options.narration = request->narration;
    options.record_folder = request->record_folder.value_or(options.record_folder);
    options.width_px = request->width_px;
    options.height_px = request->height_px;
    return steelyard::app::run(options);
}

} // namespace

int main(int argc, char** argv) {
    if (steelyard::cli::asks_for_window(argc, argv))
        return open_window(argc, argv);
    return steelyard::cli::run_command_line(argc, argv, {std::cin, std::cout, std::cerr});
}
