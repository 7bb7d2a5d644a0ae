#include "app/look/fonts.h"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <string>

namespace steelyard::app {

namespace {

namespace fs = std::filesystem;

/// Where the distributions' packages of Inter put it.
constexpr const char* kInterFolders[] = {"/usr/share/fonts/opentype/inter",
                                         "/usr/share/fonts/truetype/inter"};

/// ImGui measures a font by ascent plus descent, a drawing by the em. Ratio for Inter 4.0.
constexpr float kLinePerEm = 0.96875F + 0.24148F;

std::string find_inter(const char* weight) {
    for (const char* folder : kInterFolders)
        for (const char* ending : {".otf", ".ttf"}) {
            const fs::path path = fs::path(folder) / ("Inter-" + std::string(weight) + ending);
            std::error_code ignored;
            if (fs::is_regular_file(path, ignored))
                return path.string();
        }
    return {};
}

/// Latin for names in most languages, and the signs of mechanics: · × ÷ ° − ≈ ≤ ≥ → Δ θ μ τ ².
const ImWchar kGlyphs[] = {0x20,   0x17F,  0x394,  0x394,  0x3A3,  0x3A3,  0x3B1,  0x3C9,
                           0x2009, 0x202F, 0x2070, 0x209C, 0x2190, 0x2193, 0x2212, 0x2212,
                           0x221A, 0x221A, 0x2248, 0x2248, 0x2260, 0x2265, 0};

/// At the key size stand our own words and numbers only, always strong: a part of the letters, for
/// these are as large as all others together, and the first frame waits for them.
const ImWchar kKeyGlyphs[] = {0x20, 0xFF, 0x2009, 0x202F, 0x2070, 0x207B, 0x2212, 0x2212, 0};

#if IMGUI_VERSION_NUM < 19200
/// Gives every digit the advance of the widest, the glyph in its middle.
void level_digits(ImFont& font) {
    float widest = 0.0F;
    for (const ImFontGlyph& glyph : font.Glyphs)
        if (glyph.Codepoint >= '0' && glyph.Codepoint <= '9')
            widest = std::max(widest, glyph.AdvanceX);
    for (ImFontGlyph& glyph : font.Glyphs) {
        if (glyph.Codepoint < '0' || glyph.Codepoint > '9')
            continue;
        const float shift = 0.5F * (widest - glyph.AdvanceX);
        glyph.X0 += shift;
        glyph.X1 += shift;
        glyph.AdvanceX = widest;
    }
    font.BuildLookupTable();
}
#endif

} // namespace

float Fonts::height(scene::TextSize size) const {
    return std::round(kLinePerEm * static_cast<float>(scene::text_height_px(size)) * scale);
}

Fonts load_fonts(float scale, float device_pixels) {
    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    atlas.Clear();
    atlas.Flags |= ImFontAtlasFlags_NoPowerOfTwoHeight;
    Fonts fonts;
    fonts.scale = scale;
    const std::string regular = find_inter("Regular");
    const std::string strong = find_inter("SemiBold");
    ImFontConfig config;
    config.OversampleH = 2;
    config.OversampleV = 1;
    // The first font added is ImGui's default: body text.
    for (const scene::TextSize size : {scene::TextSize::body, scene::TextSize::caption,
                                       scene::TextSize::reading, scene::TextSize::key}) {
        const bool is_key = size == scene::TextSize::key;
#if IMGUI_VERSION_NUM < 19200
        const float height_px = fonts.height(size) * device_pixels;
#else // later versions make letters finer by themselves
        const float height_px = fonts.height(size);
#endif
        const ImWchar* glyphs = is_key ? kKeyGlyphs : kGlyphs;
        const auto add = [&](const std::string& path) {
            if (!path.empty())
                return atlas.AddFontFromFileTTF(path.c_str(), height_px, &config, glyphs);
            ImFontConfig plain;
            plain.SizePixels = height_px;
            return atlas.AddFontDefault(&plain);
        };
        const auto index = static_cast<std::size_t>(size);
        fonts.regular[index] = add(is_key ? strong : regular);
        fonts.strong[index] = is_key ? fonts.regular[index] : add(strong);
    }
#if IMGUI_VERSION_NUM < 19200
    atlas.Build();
    for (ImFont* font : atlas.Fonts) {
        level_digits(*font);
        font->Scale = 1.0F / device_pixels;
    }
#endif
    return fonts;
}

float baseline_of(const ImFont& font, float height_px) {
#if IMGUI_VERSION_NUM < 19200
    return font.Ascent * height_px / font.FontSize;
#else
    return const_cast<ImFont&>(font).GetFontBaked(height_px)->Ascent;
#endif
}

} // namespace steelyard::app
