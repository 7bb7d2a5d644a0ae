// The program of a page in a browser: the window, and nothing of the command line.

#include "app/run.h"
#include "setup/files/data_folder.h"

#include <string_view>

int main(int argc, char** argv) {
    steelyard::app::RunOptions options;
    options.data_folder = steelyard::setup::data_folder();
    if (argc > 2 && std::string_view(argv[1]) == "--narration")
        options.narration = argv[2]; // what each frame shows, for tests
    return steelyard::app::run(options);
}
