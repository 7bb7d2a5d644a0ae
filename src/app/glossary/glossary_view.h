#pragma once
// The glossary over the whole window: a line to search in, the terms, and what the chosen one means
// with a drawing that shows it.

#include "app/frame/layout.h"
#include "app/look/style.h"
#include "app/platform/window.h"
#include "lesson/glossary.h"
#include "lesson/lesson_quantity.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

/// The glossary between frames.
struct GlossaryState {
    std::vector<lesson::Term> terms;
    std::string fault; ///< why there are none
    std::string search;
    std::size_t chosen = 0; ///< index into the terms
    bool wants_keyboard = true;
    bool brings_up = true; ///< the chosen term is to come into sight
    std::string remark;    ///< what came of printing it

    /// The chosen term's stage solved; empty where it has none.
    struct Shown {
        std::size_t term = 0;
        lesson::LessonStage stage;
        lesson::SolvedStage solved; ///< of that stage, which it points to
    };
    std::unique_ptr<Shown> shown;
};

/// Reads the glossary of a folder of assets; what is wrong with it is said on the page.
GlossaryState open_glossary(const std::filesystem::path& assets);

/// Chooses a term by its place among those that the search finds, +1 down or -1 up.
void step_term(GlossaryState& state, int by);

struct GlossaryFrame {
    bool close = false;
    bool print = false;
    scene::Drawing drawing; ///< on the sheet, in the window's own places
};

/// Draws the page and reads its keys: up and down choose, typing searches, Escape closes.
/// @param muscles  that are known, for bodies
GlossaryFrame draw_glossary(const Style& style, const Layout& layout,
                            const std::vector<KeyPress>& keys, setup::UnitSystem units,
                            const std::vector<mechanics::Muscle>& muscles, GlossaryState& state);

} // namespace steelyard::app
