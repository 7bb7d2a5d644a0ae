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
PlaceFrame run_kind(const PlaceInput& input, const std::string& heading, const BeginNew& anew,
                    Choosable<Kind>& shelf, const PutOnStage<Kind>& put) {
    Library& library = input.around.library;
    look_up(input, library, shelf);
    ShelfContent content{heading, anew.word, !shelf.removed.empty(), shelf.offered.faults};
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
        shelf.state.open = false;
        if (result.opened)
            put(shelf.offered.setups[*result.opened]);
        else
            anew.begin();
        frame.changed = true;
    }
    return frame;
}

} // namespace

PlaceFrame run_shelf(const PlaceInput& input, const std::string& heading, const BeginNew& anew,
                     Choosable<setup::LeverSetup>& shelf,
                     const PutOnStage<setup::LeverSetup>& put) {
    return run_kind(input, heading, anew, shelf, put);
}

PlaceFrame run_shelf(const PlaceInput& input, const std::string& heading, const BeginNew& anew,
                     Choosable<setup::BodySetup>& shelf, const PutOnStage<setup::BodySetup>& put) {
    return run_kind(input, heading, anew, shelf, put);
}

PlaceFrame run_stances(const PlaceInput& input, ShelfState& state,
                       const std::function<void(const setup::BodySetup&)>& begin) {
    const ExerciseShelf& stances = input.around.library.stances();
    const scene::Point picture_px = card_picture_px(input.style, input.window_px);
    if (state.is_old || state.cards_width_px != picture_px.x())
        state.cards = cards_of(stances, picture_px);
    state.cards_width_px = picture_px.x();
    state.is_old = false;
    ShelfFrame result =
        draw_shelf(input.style, {"How does it begin?", nullptr, false, stances.faults},
                   input.window_px, *input.frame.keys, state);
    PlaceFrame frame;
    frame.pictures = std::move(result.pictures);
    if (result.opened) {
        state.open = false;
        begin(stances.setups[*result.opened].setup);
        frame.changed = true;
    }
    return frame;
}

void draw_trouble(const PlaceInput& input, const std::string& sentence) {
    draw_paragraph(*ImGui::GetBackgroundDrawList(), input.style,
                   {scene::TextSize::body, false, scene::Role::wrong},
                   {24.0F, input.style.px(120.0F)},
                   static_cast<float>(input.layout.stage_px.x()) - 48.0F, sentence);
}

} // namespace steelyard::app
