#include "paint/pdf/figure_words.h"

namespace steelyard::paint {
namespace {

/// Cairo keeps what is attached to a context by the address of a key.
const cairo_user_data_key_t kGathered{};

} // namespace

void gather_figures(cairo_t* surface, FigureWords& words) {
    cairo_set_user_data(surface, &kGathered, &words, nullptr);
}

void note_figure(cairo_t* surface, const std::string& shows) {
    if (auto* const words = static_cast<FigureWords*>(cairo_get_user_data(surface, &kGathered)))
        words->push_back(shows);
}

} // namespace steelyard::paint
