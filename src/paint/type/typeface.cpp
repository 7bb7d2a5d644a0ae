#include "paint/type/typeface.h"

#include <pango/pangocairo.h>

#include <algorithm>
#include <string_view>
#include <vector>

namespace steelyard::paint {
using namespace publish;
namespace {

constexpr std::string_view kFamilies[] = {"Inter", "Noto Sans", "DejaVu Sans", "Liberation Sans",
                                          "FreeSans"};

std::vector<std::string> installed_families() {
    PangoFontFamily** families = nullptr;
    int count = 0;
    pango_font_map_list_families(pango_cairo_font_map_get_default(), &families, &count);
    std::vector<std::string> names;
    for (int i = 0; i < count; ++i)
        names.emplace_back(pango_font_family_get_name(families[i]));
    g_free(families);
    return names;
}

tl::unexpected<PublishError> no_font(const char* what) {
    return tl::make_unexpected(PublishError{
        PublishFault::no_font,
        std::string(what) + " was not found. Install the package fonts-inter and try again."});
}

} // namespace

tl::expected<std::string, PublishError> text_family() {
    const std::vector<std::string> installed = installed_families();
    for (const std::string_view family : kFamilies)
        if (std::find(installed.begin(), installed.end(), family) != installed.end())
            return std::string(family);
    return no_font("No font for text");
}

tl::expected<std::string, PublishError> paper_family() {
    return text_family().and_then([](const std::string& family) {
        return family == kFamilies[0] ? tl::expected<std::string, PublishError>(family)
                                      : no_font("Inter, the font that papers are set in,");
    });
}

} // namespace steelyard::paint
