#include "app/body/plot_panel.h"

#include "app/own/own_files.h"
#include "app/platform/folders.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "publish/pictures/picture_file.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using scene::Point;
using scene::Role;
using scene::TextSize;

constexpr double kTop_px = 70.0;   ///< of the plot's room: below the row of places
constexpr double kWords_px = 26.0; ///< of the row of words above, and of that below
/// A picture of the plot has this many pixels for one of the sheet's.
constexpr double kPictureScale = 3.0;

/// The plot alone on a sheet of its own.
scene::Drawing picture_of(const BodyModel& model, PlotSubject subject,
                          const scene::CurvePlot& plot) {
    constexpr double kMargin_px = 16.0;
    scene::CurvePlot alone = plot;
    alone.title = title_of(model, subject);
    alone.text_scale = 1.0;
    alone.size_px = {420.0, 300.0};
    alone.corner_px = {kMargin_px, 2.0 * kMargin_px};
    alone.hover.reset();
    scene::Drawing drawing;
    drawing.size_px = alone.size_px + Point(2.0 * kMargin_px, 3.0 * kMargin_px);
    drawing.title = model.state.setup.head.name;
    drawing.description = alone.title + " over " + alone.range;
    scene::Label title;
    title.at = {kMargin_px, 1.5 * kMargin_px};
    title.text = model.state.setup.head.name;
    title.strong = true;
    drawing.shapes.emplace_back(std::move(title));
    scene::add_curve_plot(alone, drawing.shapes);
    return drawing;
}

/// "one-arm-row-torque.png": from the exercise's name, plain letters only.
std::string file_name(const BodyModel& model, PlotSubject subject, const char* ending) {
    return file_stem(model.state.setup.head.name, {}) + "-" + word_of(subject) + ending;
}

std::string write_picture(const BodyModel& model, const PlotPanel& panel, scene::Look look,
                          const std::filesystem::path& folder, const publish::Tools& tools,
                          const char* ending) {
    if (folder.empty())
        return "There is no folder to write to: no home directory is known.";
    const std::filesystem::path path = folder / file_name(model, panel.subject, ending);
    std::error_code ignored; // what cannot be made is told when the file is written
    std::filesystem::create_directories(folder, ignored);
    const scene::Drawing drawing = picture_of(model, panel.subject, panel.plot);
    const publish::PictureSize size{static_cast<int>(kPictureScale * drawing.size_px.x()),
                                    static_cast<int>(kPictureScale * drawing.size_px.y())};
    const auto written = publish::write_picture(drawing, look, size, path, tools);
    return written ? "Written: " + where_given(path) : written.error().message;
}

/// What the plot's curves depend on, as one number that changes with any of it.
int made_from(const BodyModel& model, PlotSubject subject, setup::UnitSystem units, bool band) {
    return ((model.version * 4 + static_cast<int>(subject)) * 2 + static_cast<int>(units)) * 2 +
           (band ? 1 : 0);
}

} // namespace

scene::Rect plot_room(const Layout& layout, double text_scale) {
    const Point stage_px = layout.stage_px;
    const Point size_px{std::clamp(0.31 * stage_px.x(), 230.0 * text_scale, 440.0 * text_scale),
                        std::clamp(0.34 * stage_px.y(), 170.0 * text_scale, 360.0 * text_scale)};
    const Point high{stage_px.x() - 16.0, kTop_px * text_scale + size_px.y()};
    if (size_px.x() > 0.45 * stage_px.x() || size_px.y() > 0.5 * stage_px.y())
        return {high, high};
    return {{high.x() - size_px.x(), kTop_px * text_scale}, high};
}

void keep_plot(const BodyModel& model, setup::UnitSystem units, const scene::PlotBand* band,
               const Style& style, const Layout& layout, PlotPanel& panel) {
    const double scale = style.fonts.scale;
    const int from = made_from(model, panel.subject, units, band != nullptr);
    if (from != panel.made_for || panel.plot.text_scale != scale) {
        panel.plot = make_plot(model, panel.subject, units, band, scale);
        panel.made_for = from;
    }
    const scene::Rect room = plot_room(layout, scale);
    panel.plot.corner_px = room.low + Point(0.0, kWords_px * scale);
    panel.plot.size_px = room.high - room.low - Point(0.0, 2.0 * kWords_px * scale);
    panel.plot.title.clear(); // the word in force above says it
    panel.plot.cursor = model.progress;
    panel.plot.hover = panel.held ? std::nullopt : panel.hover;
}

std::optional<double> point_at_plot(const StagePointer& pointer, PlotPanel& panel) {
    if (pointer.released)
        panel.held = false;
    const bool over = pointer.on_stage && scene::is_over(panel.plot, pointer.at_px);
    panel.hover =
        over ? std::optional(std::clamp(scene::range_at(panel.plot, pointer.at_px), 0.0, 1.0))
             : std::nullopt;
    if (pointer.pressed && over)
        panel.held = true;
    if (!panel.held)
        return std::nullopt;
    return std::clamp(scene::range_at(panel.plot, pointer.at_px), 0.0, 1.0);
}

std::string draw_plot_words(const Style& style, const BodyModel& model, setup::UnitSystem units,
                            const std::filesystem::path& folder, const publish::Tools& tools,
                            PlotPanel& panel) {
    const scene::CurvePlot& plot = panel.plot;
    const TextStyle how{TextSize::caption, false, Role::quiet_ink};
    const auto width_px = static_cast<float>(plot.size_px.x());
    begin_area("plot subjects", plot.corner_px - Point(0.0, kWords_px * style.fonts.scale),
               {plot.size_px.x(), kWords_px * style.fonts.scale});
    auto left = static_cast<float>(plot.corner_px.x());
    float base = static_cast<float>(plot.corner_px.y()) - style.px(8.0F);
    for (const PlotSubject subject : kPlotSubjects) {
        const char* word = word_of(subject);
        if (word_button(style, word, {left, base}, word, panel.subject == subject))
            panel.subject = subject;
        left += text_width(style, {}, word) + style.px(14.0F);
    }
    end_area();

    std::string notice;
    const double below_px = plot.corner_px.y() + plot.size_px.y();
    begin_area("plot words", {plot.corner_px.x(), below_px},
               {plot.size_px.x(), kWords_px * style.fonts.scale});
    left = static_cast<float>(plot.corner_px.x());
    base = static_cast<float>(below_px) + style.px(16.0F);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (panel.hover && !panel.held) {
        const ToldFrom from{panel.made_for, *panel.hover, width_px, style.fonts.scale};
        draw_text(list, style, {TextSize::caption, false, Role::ink}, {left, base},
                  panel.told.of(from, [&] {
                      return shortened(style, how,
                                       values_at(model, panel.subject, units, *panel.hover),
                                       width_px);
                  }));
    } else {
        left += draw_text(list, style, how, {left, base}, "copy as") + style.px(10.0F);
        for (const char* word : {"CSV", "PNG", "SVG"}) {
            if (word_button(style, word, {left, base}, word, false)) {
                if (std::string(word) == "CSV") {
                    ImGui::SetClipboardText(curves_csv(model).c_str());
                    notice = "The curves are in the clipboard, as comma-separated values.";
                } else {
                    notice = write_picture(model, panel, style.look, folder, tools,
                                           std::string(word) == "PNG" ? ".png" : ".svg");
                }
            }
            left += text_width(style, {}, word) + style.px(14.0F);
        }
    }
    end_area();
    return notice;
}

} // namespace steelyard::app
