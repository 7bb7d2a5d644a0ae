#include "app/bench/readings.h"
#include "app/bench/sample_bench.h"
#include "app/look/fonts.h"
#include "app/unseen_sheet.h"
#include "catch.h"
#include "mechanics/lever/random_lever.h"
#include "scene/marks/text_width.h"
#include "words/lever/lever_steps.h"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>

using namespace steelyard;
using namespace steelyard::app;

namespace {

bool has_glyph(ImFont& font, unsigned code_point) {
#if IMGUI_VERSION_NUM < 19200
    return font.FindGlyphNoFallback(static_cast<ImWchar>(code_point)) != nullptr;
#else
    return font.IsGlyphInFont(static_cast<ImWchar>(code_point));
#endif
}

/// Code points of a text beyond ASCII, each with a piece of the text to find it by.
void collect(const std::string& text, std::map<unsigned, std::string>& found) {
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        if (byte < 0xC0) // ASCII, or inside a character
            continue;
        const std::size_t more = byte >= 0xF0 ? 3 : byte >= 0xE0 ? 2 : 1;
        unsigned code_point = byte & (0x3FU >> more);
        for (std::size_t j = 1; j <= more && i + j < text.size(); ++j)
            code_point = code_point << 6U | (static_cast<unsigned char>(text[i + j]) & 0x3FU);
        found.try_emplace(code_point, text.substr(i > 20 ? i - 20 : 0, 40));
    }
}

std::string text_of(const std::filesystem::path& path) {
    std::ifstream file(path);
    return {std::istreambuf_iterator<char>(file), {}};
}

void check_glyphs(const std::map<unsigned, std::string>& code_points) {
    const UnseenSheet sheet({1280.0, 720.0});
    for (const auto& [code_point, where] : code_points)
        for (const auto size :
             {scene::TextSize::body, scene::TextSize::caption, scene::TextSize::reading})
            for (const bool strong : {false, true}) {
                INFO("U+" << std::hex << code_point << " in '" << where << "'");
                CHECK(has_glyph(*sheet.style.fonts.get(size, strong), code_point));
            }
}

} // namespace

TEST_CASE("every character of setups and questions has a glyph on the screen") {
    std::map<unsigned, std::string> found;
    for (const char* folder : {"/assets", "/question_bank"})
        for (const auto& entry : std::filesystem::recursive_directory_iterator(
                 std::string(STEELYARD_SOURCE_DIR) + folder))
            if (entry.path().extension() == ".toml")
                collect(text_of(entry.path()), found);
    check_glyphs(found);
}

TEST_CASE("every character of readings and computations has a glyph on the screen") {
    std::map<unsigned, std::string> found;
    mechanics::RandomNumbers random(41);
    for (int i = 0; i < 300; ++i) {
        setup::LeverSetup setup;
        setup.lever = mechanics::random_lever(random, {true, true, i % 2 == 0});
        BenchModel model = make_bench(setup, std::nullopt);
        model.units = i % 3 == 0 ? setup::UnitSystem::us : setup::UnitSystem::si;
        const BenchReadings readings = read_bench(model);
        for (const std::string& note : readings.notes)
            collect(note, found);
        for (const Reading& row : readings.rows) {
            collect(row.name + row.value, found);
            for (const words::ComputedStep& step :
                 words::lever_steps(row.id, model.state.setup.lever, model.solved, model.units))
                collect(step.title + step.symbols + step.numbers + step.result, found);
        }
    }
    CHECK(found.count(0x2212) == 1); // a true minus has been among them
    check_glyphs(found);
}

TEST_CASE("the large words and numbers have their glyphs") {
    const UnseenSheet sheet({1280.0, 720.0});
    for (const char* text : {"First class", "1.36", "−0.5", "2\u2009300", "1.5 × 10⁻³", "45°"}) {
        std::map<unsigned, std::string> found;
        collect(text, found);
        for (const auto& [code_point, where] : found)
            CHECK(has_glyph(*sheet.style.fonts.get(scene::TextSize::key, true), code_point));
    }
}

TEST_CASE("digits are equally wide, so that numbers do not shake") {
    const UnseenSheet sheet({1280.0, 720.0});
    for (const auto size : {scene::TextSize::body, scene::TextSize::caption,
                            scene::TextSize::reading, scene::TextSize::key})
        for (const bool strong : {false, true}) {
            ImFont& font = *sheet.style.fonts.get(size, strong);
            const float height_px = sheet.style.fonts.height(size);
            const auto width = [&](const char* text) {
                return font.CalcTextSizeA(height_px, 1.0e9F, 0.0F, text).x;
            };
            for (const char* digits : {"1", "2", "3", "4", "5", "6", "7", "8", "9"})
                CHECK(width(digits) == width("0"));
        }
}

TEST_CASE("the estimate of a text's width fits the font that is shown") {
    // Labels are laid out by the estimate: a label must not be wider than the room kept for it by
    // more than the hair of air around letters, nor much narrower.
    const UnseenSheet sheet({1280.0, 720.0});
    for (const char* text : {"heavier child, 32.0 kg", "118 N", "own weight 137 N", "arm 1.10 m",
                             "load torque 345 N·m", "reaction 1\u2009681 N", "balanced"})
        for (const auto size :
             {scene::TextSize::body, scene::TextSize::caption, scene::TextSize::reading})
            for (const bool strong : {false, true}) {
                const float shown_px =
                    sheet.style.fonts.get(size, strong)
                        ->CalcTextSizeA(sheet.style.fonts.height(size), 1.0e9F, 0.0F, text)
                        .x;
                const double estimate_px = scene::text_width_px(text, size, strong, 1.0);
                INFO(text << ": shown " << shown_px << " px, estimated " << estimate_px << " px");
                CHECK(shown_px <= 1.03 * estimate_px + 2.0);
                CHECK(shown_px >= 0.90 * estimate_px - 2.0);
            }
}
