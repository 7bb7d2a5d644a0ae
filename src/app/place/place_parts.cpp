#include "app/place/place_parts.h"

namespace steelyard::app {

namespace {

LeverShelf shipped_with_own(Library& library, const setup::LeverSetup* /*kind*/) {
    return with_own(library.own(), library.levers());
}

ExerciseShelf shipped_with_own(Library& library, const setup::BodySetup* /*kind*/) {
    return with_own(library.own(), library.exercises());
}

template <typename Kind>
void look_up(const PlaceInput& input, Library& library, Choosable<Kind>& shelf) {
    const scene::Point picture_px = card_picture_px(input.style, input.window_px);
    if (shelf.state.is_old) {
        shelf.offered = shipped_with_own(library, static_cast<const Kind*>(nullptr));
        if (shelf.left_behind)
            shelf.offered.setups.insert(shelf.offered.setups.begin(), *shelf.left_behind);
    }
    if (shelf.state.is_old || shelf.state.cards_width_px != picture_px.x())
        shelf.state.cards = cards_of(shelf.offered, picture_px);
    shelf.state.cards_width_px = picture_px.x();
    shelf.state.is_old = false;
}

template <typename Kind>
void remove(const OwnSetups& own, const OwnFile& file, Choosable<Kind>& shelf) {
    const auto removed = own.remove(file.path);
    shelf.trouble = removed ? std::string() : removed.error();
    shelf.removed = removed.value_or(std::filesystem::path());
    shelf.state.is_old = true;
}

template <typename Kind> void put_back(const OwnSetups& own, Choosable<Kind>& shelf) {
    shelf.trouble = own.put_back(shelf.removed);
    shelf.removed.clear();
    shelf.state.is_old = true;
}

template <typename Kind>
PlaceFrame run_kind(const PlaceInput& input, const std::string& heading, const char* new_word,
                    const std::optional<Kind>& new_one, Choosable<Kind>& shelf,
                    const PutOnStage<Kind>& put) {
    Library& library = input.around.library;
    look_up(input, library, shelf);
    ShelfContent content{heading, new_one ? new_word : nullptr, !shelf.removed.empty(),
                         shelf.offered.faults};
    if (!shelf.trouble.empty())
        content.faults.push_back(shelf.trouble);
    ShelfFrame result =
        draw_shelf(input.style, content, input.window_px, *input.frame.keys, shelf.state);
    PlaceFrame frame;
    frame.pictures = std::move(result.pictures);
    if (result.removed)
        remove(library.own(), *shelf.offered.setups[*result.removed].file, shelf);
    else if (result.put_back)
        put_back(library.own(), shelf);
    else if (result.opened || result.makes_new) {
        put(result.opened ? shelf.offered.setups[*result.opened] : Shelved<Kind>{*new_one});
        shelf.state.open = false;
        frame.changed = true;
    }
    return frame;
}

} // namespace

PlaceFrame run_shelf(const PlaceInput& input, const std::string& heading,
                     const std::optional<setup::LeverSetup>& new_one,
                     Choosable<setup::LeverSetup>& shelf,
                     const PutOnStage<setup::LeverSetup>& put) {
    return run_kind(input, heading, "New lever", new_one, shelf, put);
}

PlaceFrame run_shelf(const PlaceInput& input, const std::string& heading,
                     Choosable<setup::BodySetup>& shelf, const PutOnStage<setup::BodySetup>& put) {
    return run_kind<setup::BodySetup>(input, heading, nullptr, std::nullopt, shelf, put);
}

void draw_trouble(const PlaceInput& input, const std::string& sentence) {
    draw_paragraph(*ImGui::GetBackgroundDrawList(), input.style,
                   {scene::TextSize::body, false, scene::Role::wrong},
                   {24.0F, input.style.px(120.0F)},
                   static_cast<float>(input.layout.stage_px.x()) - 48.0F, sentence);
}

} // namespace steelyard::app
