// The keys of the whole window, and the ways from one place to another.

#include "app/application.h"
#include "app/platform/key.h"

#include <algorithm>
#include <array>
#include <cassert>

namespace steelyard::app {

namespace {

/// True for what a text field may have a use for: all but function keys and most of what is pressed
/// with Ctrl, which lead elsewhere from a text field, too.
bool is_for_text(const KeyPress& key) {
    if (key.key >= key::kF1 && key.key <= key::kF12)
        return false;
    const bool control = (key.modifiers & key::kWithControl) != 0;
    const bool sign = key.key > key::kSpace && key.key <= key::kZ;
    constexpr std::array kEdit{key::kA, key::kC, key::kV, key::kX, key::kY, key::kZ};
    return !control || !sign || std::find(kEdit.begin(), kEdit.end(), key.key) != kEdit.end();
}

} // namespace

/// Keys of the whole window; what is left goes to the place.
std::vector<KeyPress> Application::own_keys(const std::vector<KeyPress>& keys) {
    for (const KeyPress& key : keys)
        if (key.key == key::kF11)
            window_.turn_full_screen();
    const bool by_letters = letters_.are_shown();
    letters_.begin_frame(keys);
    if (by_letters)
        return {};
    for (const KeyPress& key : keys)
        if (key.key == key::kF9 && !place().claims(key))
            letters_.show();
    if (letters_.are_shown())
        return {};
    const bool typing = ImGui::GetIO().WantTextInput;
    std::vector<KeyPress> left;
    for (const KeyPress& key : keys) {
        if (typing && is_for_text(key))
            continue;
        if (key.key != key::kF11 && (place().claims(key) || !handle_key(key)))
            left.push_back(key);
    }
    return left;
}

bool Application::handle_control_key(int key) {
    if (key == key::kG && page_ == Page::none) {
        open_glossary_at(links_.first());
        return true;
    }
    if (key == key::kS && page_ == Page::none && able<Keeping>() != nullptr &&
        !shape().covers_window) {
        grant(RowWish::keep);
        return true;
    }
    Preferences wanted = preferences();
    if (key == key::kEqual || key == key::kKeypadAdd)
        wanted.text_size = next_text_size(wanted.text_size, 1);
    else if (key == key::kMinus || key == key::kKeypadSubtract)
        wanted.text_size = next_text_size(wanted.text_size, -1);
    else
        return false;
    prefer(wanted);
    return true;
}

bool Application::handle_key(const KeyPress& key) {
    if ((key.modifiers & key::kWithControl) != 0)
        return handle_control_key(key.key);
    if (key.key == key::kD) {
        Preferences wanted = preferences();
        wanted.look = next_look(wanted.look);
        prefer(wanted);
        return true;
    }
    if (page_ != Page::none || shape().covers_window)
        return false;
    if (key.key == key::kF1) {
        grant(RowWish::help);
    } else if (key.key == key::kO && able<Choosing>() != nullptr) {
        grant(RowWish::open_shelf);
    } else if (key.key == key::kU) {
        around_.units =
            around_.units == setup::UnitSystem::si ? setup::UnitSystem::us : setup::UnitSystem::si;
        save_soon();
    } else if (const auto name = place_at_key(key.key, place_name_)) {
        go_to(*name);
    } else {
        return false;
    }
    return true;
}

void Application::draw_row(const Layout& layout) {
    const auto* choosing = able<Choosing>();
    const auto* undoing = able<Undoing>();
    const PlacesRow row{place_name_, choosing != nullptr ? choosing->shelf_word() : nullptr,
                        able<Keeping>() != nullptr, undoing != nullptr && undoing->can_undo(),
                        undoing != nullptr && undoing->can_redo()};
    const double width_px = shape().has_column ? layout.stage_px.x() : window_.size_px().x();
    const RowPress pressed = draw_places_row(style_, static_cast<float>(width_px), row);
    if (const auto* name = std::get_if<PlaceName>(&pressed))
        go_to(*name);
    else if (const auto* wish = std::get_if<RowWish>(&pressed))
        grant(*wish);
}

void Application::grant(RowWish wish) {
    switch (wish) {
    case RowWish::open_shelf:
        return able<Choosing>()->open_shelf();
    case RowWish::keep:
        if (auto setup = able<Keeping>()->to_keep()) {
            keep_ = open_keep(around_.library.own(), *std::move(setup),
                              able<Keeping>()->kept_as().file, around_.tools);
            page_ = Page::keep;
        }
        return;
    case RowWish::undo:
        able<Undoing>()->undo();
        return save_soon();
    case RowWish::redo:
        able<Undoing>()->redo();
        return save_soon();
    case RowWish::glossary:
        return open_glossary_at(std::nullopt);
    case RowWish::settings:
        page_ = Page::settings;
        return;
    case RowWish::help:
        page_ = Page::help;
        return;
    }
}

Place& Application::place(PlaceName name) {
    std::unique_ptr<Place>& kept = places_[static_cast<std::size_t>(name)];
    if (!kept)
        kept = entry_of(name).make(around_);
    return *kept;
}

void Application::go_to(PlaceName name) {
    if (save_due_s_ > 0.0) // the start tells what was kept
        save_work();
    place_name_ = name;
    place().enter(around_);
    save_soon();
}

void Application::grant(const PlaceWish& wish) {
    if (const auto* go = std::get_if<GoTo>(&wish)) {
        go_to(go->place);
        if (auto* parted = able<Parted>())
            parted->enter_part(go->part);
    } else if (const auto* bring = std::get_if<BringFrom>(&wish)) {
        take_up_from(bring->place);
    } else if (const auto* show = std::get_if<ShowSetup>(&wish)) {
        open(OpenedFile(show->setup));
    } else {
        tour_ = {true, 0};
        shown_around_ = true;
        go_to(tour_place(tour_));
    }
}

void Application::take_up_from(PlaceName name) {
    place(name).enter(around_);
    const auto* lending = ability_of<Lending>(&place(name));
    auto* taking = able<TakingUp>();
    assert(lending != nullptr && taking != nullptr); // only who takes up asks, of who lends
    if (const auto stage = lending->stage())
        taking->take_up(*stage, around_);
    save_soon();
}

void Application::open(const OpenedFile& file) {
    notice_.clear();
    go_to(place_for(file));
    able<Opening>()->open(file, around_);
}

void Application::take_dropped_files(const std::vector<std::string>& paths) {
    for (const std::string& path : paths) {
        const auto file = read_opened_file(path);
        if (file)
            open(*file);
        else
            notice_ = setup::to_text(file.error());
    }
}

} // namespace steelyard::app
