// The program without its window (preset core): the command line alone.

#include "cli/command_line.h"
#include "cli/window_request.h"

#include <iostream>

int main(int argc, char** argv) {
    if (steelyard::cli::asks_for_window(argc, argv)) {
        std::cerr << "This steelyard was built without its window. `steelyard --help` shows what "
                     "works without one; scripts/run.sh builds one that has it.\n";
        return 2;
    }
    return steelyard::cli::run_command_line(argc, argv, {std::cin, std::cout, std::cerr});
}
