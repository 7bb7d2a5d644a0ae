#include "app/run.h"

#include "app/application.h"

#include <iostream>

namespace steelyard::app {

int run(const RunOptions& options) {
    SavedWork saved(SavedWork::usual_folder());
    std::optional<OpenedFile> named;
    if (options.file) {
        auto read = read_opened_file(*options.file);
        if (!read) {
            std::cerr << setup::to_text(read.error()) << '\n';
            return 2;
        }
        named = std::move(*read);
    }
    const Preferences preferences = saved.load_preferences();
    auto window = Window::open(options.width_px > 0 ? options.width_px : preferences.width_px,
                               options.height_px > 0 ? options.height_px : preferences.height_px,
                               "Steelyard");
    if (!window) {
        std::cerr << window.error().what << '\n';
        return 1;
    }
    auto painter = ShapePainter::create();
    if (!painter) {
        std::cerr << "Steelyard cannot draw: " << painter.error() << '\n';
        return 1;
    }
    auto application =
        std::make_unique<Application>(std::move(*window), std::move(*painter), std::move(saved),
                                      options.data_folder, options.record_folder, options.tools);
    if (named)
        application->open(*named);
    if (options.narration) {
        std::ofstream file(*options.narration);
        if (!file) {
            std::cerr << "The narration cannot be written to " << options.narration->string()
                      << ": check that the folder exists and is yours.\n";
            return 1;
        }
        application->tell_to(std::move(file));
    }
    take_turns(std::move(application));
    return 0;
}

} // namespace steelyard::app
