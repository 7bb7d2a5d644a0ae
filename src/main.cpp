// The one program: a window when nothing or a setup is named, else the command line.

#include "cli/command_line.h"

#include <iostream>

int main(int argc, char** argv) {
    return steelyard::cli::run_command_line(argc, argv, {std::cin, std::cout, std::cerr});
}
