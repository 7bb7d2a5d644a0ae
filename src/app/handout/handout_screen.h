#pragma once
// Making a handout: choices in the column, the page as it will be printed on the stage.

#include "app/background_work.h"
#include "app/frame/frame_input.h"
#include "app/frame/layout.h"
#include "app/handout/blueprint_shelf.h"
#include "app/handout/handout_choices.h"
#include "app/handout/page_texture.h"
#include "app/handout/topic_view.h"
#include "app/look/style.h"
#include "publish/sheets/page_picture.h"
#include "publish/tools.h"

#include <filesystem>

namespace steelyard::app {

/// The page to be looked at, of the questions and of their key.
struct WantedPage {
    HandoutChoices choices;
    std::size_t version = 0; ///< from 0
    int page = 1;            ///< from 1
    int height_px = 0;

    bool operator==(const WantedPage&) const = default;
};

struct PagePair {
    publish::PagePicture questions;
    publish::PagePicture key;
};

/// The screen between frames.
struct HandoutScreen {
    publish::Tools tools; ///< not changed while a work runs
    BlueprintPlaces places;
    BlueprintShelf shelf;
    HandoutChoices choices;
    std::size_t row = 0; ///< that the arrow keys change
    std::string typed_seed;
    std::string seed_fault;
    TopicState topics; ///< of a sheet that is put together

    std::size_t version = 0; ///< that is shown, from 0
    int page = 1;            ///< that is shown, from 1
    int pages = 0;           ///< of the longer of questions and key
    WantedPage asked;        ///< what the work on the pages was started for
    BackgroundWork<PagePair> page_work;
    PageTexture questions;
    PageTexture key;
    std::string page_fault;

    BackgroundWork<std::vector<std::filesystem::path>> writing;
    std::vector<std::filesystem::path> written;
    std::string write_fault;

    bool working() const { return page_work.running() || writing.running(); }
};

/// Reads the blueprints anew; the one that was chosen stays so where it still is.
void stock_shelf(HandoutScreen& screen);

/// The choices of someone who opens the place for the first time.
void make_first_choices(HandoutScreen& screen);

/// Puts the blueprint of a file on the shelf and chooses it; what is wrong with it stands among the
/// faults.
void open_blueprint(HandoutScreen& screen, const std::filesystem::path& path);

/// Keeps the sheet that is put together as a blueprint of the person's own, and chooses it; what
/// stands in the way is said beside its topics.
void save_own_sheet(HandoutScreen& screen, const problems::Bank& bank);

/// Takes up other choices, and shows their seed in its field.
void choose(HandoutScreen& screen, const HandoutChoices& choices);

/// Runs one frame: takes up what the works have made, reads keys, draws.
/// @param bank  not changed while the screen lives
void run_handout(const Style& style, const Layout& layout, const FrameInput& input,
                 const problems::Bank& bank, HandoutScreen& screen);

} // namespace steelyard::app
