#include "app/handout/handout_screen.h"

#include "app/handout/handout_column.h"
#include "app/own/own_files.h"
#include "app/platform/folders.h"
#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/word_row.h"
#include "problems/question/question_writer.h"
#include "publish/files/whole_file.h"
#include "publish/sheets/handout_job.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <memory>
#include <optional>
#include <utility>

namespace steelyard::app {

namespace {

using publish::PagePicture;
using publish::SheetSide;
using scene::Role;
using scene::TextSize;
using Written = tl::expected<std::vector<std::filesystem::path>, std::string>;

/// Where the pages lie on the stage [px].
struct Spread {
    float top = 0.0F;
    float height = 0.0F;
    float width = 0.0F;
    float left = 0.0F;
    float gap = 0.0F;
};

Spread lay_spread(const Style& style, const Layout& layout, publish::PaperSize paper) {
    const publish::PageFormat page = publish::page_format(paper, false);
    const auto room_x = static_cast<float>(layout.stage_px.x()) - style.px(48.0F);
    Spread spread;
    spread.top = style.px(68.0F);
    spread.gap = style.px(24.0F);
    const float room_y = static_cast<float>(layout.stage_px.y()) - spread.top - style.px(64.0F);
    const auto ratio = static_cast<float>(page.width_pt / page.height_pt);
    spread.height = std::max(40.0F, std::min(room_y, 0.5F * (room_x - spread.gap) / ratio));
    spread.height = std::floor(spread.height);
    spread.width = std::floor(spread.height * ratio);
    spread.left = style.px(24.0F) + 0.5F * (room_x - spread.gap - 2.0F * spread.width);
    return spread;
}

tl::expected<PagePair, std::string> pages_of(const WantedPage& wish,
                                             const std::vector<publish::Blueprint>& blueprints,
                                             const problems::Bank& bank,
                                             const publish::Tools& tools,
                                             const publish::Progress& progress) {
    if (!tools.page_picture.is_there())
        return tl::make_unexpected(tools.page_picture.why_not());
    const auto sheets = sheets_of(wish.choices, blueprints, bank, progress);
    if (!sheets)
        return tl::make_unexpected(sheets.error());
    const publish::Worksheet& sheet = (*sheets)[std::min(wish.version, sheets->size() - 1)];
    auto questions =
        tools.page_picture(sheet, bank, SheetSide::questions, wish.page, wish.height_px, progress);
    if (!questions)
        return tl::make_unexpected(questions.error().message);
    auto key = tools.page_picture(sheet, bank, SheetSide::key, wish.page, wish.height_px, progress);
    if (!key)
        return tl::make_unexpected(key.error().message);
    return PagePair{std::move(*questions), std::move(*key)};
}

/// What decides how a page looks: where the files go does not.
WantedPage wish_of(const HandoutScreen& screen, int height_px) {
    WantedPage wish{screen.choices, screen.version, screen.page, height_px};
    wish.choices.folder.clear();
    wish.choices.formats.clear();
    return wish;
}

/// Takes up pages that are ready and has others made when they are wanted.
void keep_pages(const problems::Bank& bank, int height_px, HandoutScreen& screen) {
    if (auto made = screen.page_work.take()) {
        screen.page_fault = *made ? "" : made->error();
        if (*made) {
            screen.questions.load((*made)->questions);
            screen.key.load((*made)->key);
            screen.pages = std::max((*made)->questions.pages, (*made)->key.pages);
            screen.page = std::min(screen.page, screen.pages);
            screen.asked.page = std::min(screen.asked.page, screen.pages);
        }
    }
    const WantedPage wish = wish_of(screen, height_px);
    if (wish == screen.asked)
        return;
    if (screen.page_work.running())
        return screen.page_work.stop(); // taken in a later frame; then the new one begins
    screen.asked = wish;
    screen.page_work.start([wish, blueprints = screen.shelf.blueprints, &bank,
                            &tools = screen.tools](const publish::Progress& progress) {
        return pages_of(wish, blueprints, bank, tools, progress);
    });
}

void keep_writing(HandoutScreen& screen) {
    if (auto made = screen.writing.take()) {
        screen.write_fault = *made ? "" : made->error();
        screen.written = *made ? std::move(**made) : std::vector<std::filesystem::path>();
    }
}

/// Draws the questions, then writes one file with each call.
class Writing {
public:
    Writing(HandoutChoices choices, std::vector<publish::Blueprint> blueprints,
            const problems::Bank& bank, const publish::Tools& tools)
        : choices_(std::move(choices)), blueprints_(std::move(blueprints)), bank_(&bank),
          tools_(&tools) {}

    std::optional<Written> operator()(const publish::Progress& progress) {
        // To draw the questions takes about as long as to set them in one format.
        const std::size_t parts = 1 + choices_.formats.size();
        if (work_)
            return go_on(publish::stretch_of(progress, 1, parts, parts));
        auto sheets =
            sheets_of(choices_, blueprints_, *bank_, publish::stretch_of(progress, 0, 1, parts));
        if (!sheets)
            return Written(tl::unexpect, std::move(sheets.error()));
        work_ = std::make_shared<publish::HandoutWork>(
            *bank_, std::move(*sheets), choices_.formats, choices_.folder, *tools_,
            has_folders() ? publish::HandoutShape::files : publish::HandoutShape::package);
        return std::nullopt;
    }

private:
    std::optional<Written> go_on(const publish::Progress& progress) {
        auto files = work_->step(progress);
        if (!files)
            return std::nullopt;
        return std::move(*files).map_error(
            [](const publish::PublishError& error) { return error.message; });
    }

    HandoutChoices choices_;
    std::vector<publish::Blueprint> blueprints_;
    const problems::Bank* bank_;
    const publish::Tools* tools_;
    std::shared_ptr<publish::HandoutWork> work_; ///< null until the questions are drawn
};

void start_writing(const problems::Bank& bank, HandoutScreen& screen) {
    screen.written.clear();
    screen.write_fault.clear();
    if (screen.choices.formats.empty() || screen.choices.folder.empty()) {
        screen.write_fault = screen.choices.formats.empty() ? "Choose at least one thing to make."
                                                            : "Name a folder.";
        return;
    }
    screen.writing.start_pieces(
        Writing{screen.choices, screen.shelf.blueprints, bank, screen.tools});
}

void turn_page(HandoutScreen& screen, int step) {
    screen.page = std::clamp(screen.page + step, 1, std::max(screen.pages, 1));
}

void press(const KeyPress& key, const problems::Bank& bank, HandoutScreen& screen) {
    const std::size_t rows = rows_of(screen.choices, screen.shelf.blueprints).size();
    switch (key.key) {
    case key::kDown:
    case key::kTab:
        screen.row = std::min(screen.row + 1, rows - 1);
        return;
    case key::kUp:
        screen.row -= screen.row > 0 ? 1 : 0;
        return;
    case key::kLeft:
    case key::kRight:
        return choose(screen, stepped(screen.choices, screen.shelf.blueprints, screen.row,
                                      key.key == key::kRight ? 1 : -1));
    case key::kPageDown:
        return turn_page(screen, 1);
    case key::kPageUp:
        return turn_page(screen, -1);
    case key::kN:
        return choose(screen, with_own_sheet(screen.choices, screen.shelf.blueprints, bank));
    case key::kV:
        screen.version = (screen.version + 1) % static_cast<std::size_t>(screen.choices.versions);
        return;
    case key::kEnter:
    case key::kKeypadEnter:
        if (!screen.writing.running())
            start_writing(bank, screen);
        return;
    case key::kEscape:
        return screen.writing.stop();
    default:
        break;
    }
    const auto format = static_cast<std::size_t>(key.key - key::k1);
    const auto words = rows_of(screen.choices, screen.shelf.blueprints).back().words;
    if (key.key >= key::k1 && format < words.size())
        choose(screen, words[format].chosen);
}

void draw_page(const Style& style, const PageTexture& texture, const Spread& spread, float left) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 corner{left, spread.top};
    const ImVec2 far_corner{left + spread.width, spread.top + spread.height};
    if (texture.name() != 0)
        list.AddImage(reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(texture.name())),
                      corner, far_corner);
    list.AddRect(corner, far_corner, style.mark(Role::quiet_ink), 0.0F, 0, 1.0F);
}

/// "A B C" and the numbers of the pages, below the spread.
void draw_turning(const Style& style, const Spread& spread, HandoutScreen& screen) {
    ImVec2 at{spread.left, spread.top + spread.height + style.px(32.0F)};
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float right_px = spread.left + 2.0F * spread.width + spread.gap;
    if (screen.choices.versions > 1) {
        at.x += draw_text(list, style, {TextSize::body, false, Role::quiet_ink}, at, "Version") +
                style.px(16.0F);
        std::vector<RowWord> letters;
        for (std::size_t i = 0; i < static_cast<std::size_t>(screen.choices.versions); ++i)
            letters.push_back({problems::letter(i), i == screen.version});
        ImVec2 letters_at = at;
        if (const auto pressed = draw_word_row(style, "versions", letters, letters_at, right_px))
            screen.version = *pressed;
        at.x = std::max(at.x, spread.left + spread.width + spread.gap);
    }
    at.x += draw_text(list, style, {TextSize::body, false, Role::quiet_ink}, at, "Page") +
            style.px(16.0F);
    constexpr int kMostNumbers = 8;
    const int first =
        std::clamp(screen.page - kMostNumbers / 2, 1, std::max(1, screen.pages - kMostNumbers + 1));
    std::vector<RowWord> numbers;
    for (int page = first; page <= screen.pages && page < first + kMostNumbers; ++page)
        numbers.push_back({std::to_string(page), page == screen.page});
    if (const auto pressed = draw_word_row(style, "pages", numbers, at, right_px + style.px(40.0F)))
        screen.page = first + static_cast<int>(*pressed);
}

/// What a sheet is put together from, in place of its key.
void draw_own_sheet(const Style& style, const Spread& spread, const problems::Bank& bank,
                    HandoutScreen& screen) {
    const scene::Point corner(spread.left + spread.width + spread.gap, spread.top);
    const TopicWishes wishes =
        draw_topics(style, corner, {spread.width, spread.height}, bank,
                    screen.shelf.blueprints.size(), screen.topics, *screen.choices.own);
    if (wishes.changed) {
        HandoutChoices next = screen.choices;
        next.own = *wishes.changed;
        choose(screen, next);
    }
    if (wishes.save)
        save_own_sheet(screen, bank);
}

void draw_stage(const Style& style, const Layout& layout, const Spread& spread,
                const problems::Bank& bank, HandoutScreen& screen) {
    begin_area("pages", {0.0, spread.top - style.px(8.0F)},
               layout.stage_px - scene::Point(0.0, spread.top - style.px(8.0F)));
    draw_page(style, screen.questions, spread, spread.left);
    if (!screen.choices.own)
        draw_page(style, screen.key, spread, spread.left + spread.width + spread.gap);
    draw_turning(style, spread, screen);
    if (!screen.page_fault.empty() && !screen.page_work.running())
        draw_paragraph(*ImGui::GetWindowDrawList(), style, {TextSize::body, false, Role::wrong},
                       {spread.left + style.px(16.0F), spread.top + style.px(32.0F)},
                       spread.width - style.px(32.0F), screen.page_fault);
    end_area();
    if (screen.choices.own)
        draw_own_sheet(style, spread, bank, screen);
}

std::string usual_folder() {
    const char* home = std::getenv("HOME");
    return (std::filesystem::path(home != nullptr ? home : "") / "handouts").string();
}

} // namespace

void choose(HandoutScreen& screen, const HandoutChoices& choices) {
    screen.choices = choices;
    screen.typed_seed = std::to_string(choices.seed);
    screen.seed_fault.clear();
}

void save_own_sheet(HandoutScreen& screen, const problems::Bank& bank) {
    const publish::SheetChoice& own = *screen.choices.own;
    const std::filesystem::path path =
        free_path(screen.places.own, own.title, publish::kBlueprintEnding, "sheet");
    if (path.empty()) {
        screen.topics.said = "There is no folder to save in: no home folder is known.";
        return;
    }
    publish::Blueprint blueprint = publish::blueprint_of(own, bank, "");
    blueprint.paper = screen.choices.paper;
    blueprint.large_print = screen.choices.large_print;
    blueprint.prints_codes = screen.choices.prints_codes;
    std::error_code ignored; // what cannot be made is told when the file is written
    std::filesystem::create_directories(path.parent_path(), ignored);
    if (const auto written = publish::write_whole_file(path, publish::write_blueprint(blueprint));
        !written) {
        screen.topics.said = written.error().message;
        return;
    }
    const HandoutChoices before = screen.choices;
    stock_shelf(screen);
    HandoutChoices saved = with_blueprint(before, screen.shelf.blueprints,
                                          place_on_shelf(screen.shelf, path.string()));
    choose(screen, saved);
    screen.topics.said.clear();
}

void stock_shelf(HandoutScreen& screen) {
    const auto& before = screen.shelf.blueprints;
    const std::string chosen = before.empty() ? "" : before[screen.choices.blueprint].file;
    screen.shelf = read_blueprint_shelf(screen.places);
    screen.choices.blueprint = place_on_shelf(screen.shelf, chosen);
    screen.asked = {}; // the file may say something else by now
}

void make_first_choices(HandoutScreen& screen) {
    HandoutChoices first;
    first.versions = 2;
    first.folder = usual_folder();
    if (!screen.tools.paper_pdf.is_there())
        first.formats = {publish::HandoutFormat::html};
    choose(screen, with_blueprint(first, screen.shelf.blueprints, 0));
}

void open_blueprint(HandoutScreen& screen, const std::filesystem::path& path) {
    auto& opened = screen.places.opened;
    if (std::find(opened.begin(), opened.end(), path) == opened.end())
        opened.push_back(path);
    stock_shelf(screen);
    choose(screen, with_blueprint(screen.choices, screen.shelf.blueprints,
                                  place_on_shelf(screen.shelf, path.string())));
}

void run_handout(const Style& style, const Layout& layout, const FrameInput& input,
                 const problems::Bank& bank, HandoutScreen& screen) {
    for (const KeyPress& key : *input.keys)
        press(key, bank, screen);
    screen.version =
        std::min(screen.version, static_cast<std::size_t>(screen.choices.versions) - 1);
    const Spread spread = lay_spread(style, layout, screen.choices.paper);
    // Taken up before anything is drawn: no other frame need follow.
    const float device_pixels = std::max(1.0F, ImGui::GetIO().DisplayFramebufferScale.y);
    keep_pages(bank, static_cast<int>(spread.height * device_pixels), screen);
    keep_writing(screen);
    const HandoutWish wish = draw_handout_column(style, layout, bank, screen);
    if (wish == HandoutWish::make)
        start_writing(bank, screen);
    else if (wish == HandoutWish::stop)
        screen.writing.stop();
    draw_stage(style, layout, spread, bank, screen);
}

} // namespace steelyard::app
