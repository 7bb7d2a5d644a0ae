#include "lesson/lesson_words.h"
#include "setup/toml/letters.h"
#include "setup/units/format_quantity.h"

#include <fmt/format.h>

namespace steelyard::lesson {
namespace {

constexpr std::string_view kMarkNames[] = {"axis",    "loads",   "effort",   "arms",       "lines",
                                           "torques", "muscles", "reaction", "own weight", "strip"};
constexpr std::string_view kPredictionNames[] = {"number", "choice", "hands"};

std::string list_of(const std::vector<std::string>& texts) {
    std::string list;
    for (const std::string& text : texts)
        list += (list.empty() ? "" : ", ") + setup::toml_words(text);
    return "[" + list + "]";
}

std::string list_of(const StageMarks& marks) {
    std::vector<std::string> names;
    for (const StageMark mark : marks)
        names.emplace_back(name_of(mark));
    return list_of(names);
}

/// A line of the file, left out where there is nothing to say.
std::string line(std::string_view key, const std::string& text) {
    return text.empty() ? "" : fmt::format("{} = {}\n", key, setup::toml_words(text));
}

std::string write_prediction(const Prediction& prediction) {
    if (prediction.kind == PredictionKind::none)
        return {};
    const auto kind = static_cast<std::size_t>(prediction.kind) - 1;
    std::string text = fmt::format("\n[step.predict]\nask = \"{}\"\n", kPredictionNames[kind]);
    if (prediction.kind == PredictionKind::number)
        return text + line("of", prediction.of);
    return text + fmt::format("choices = {}\n", list_of(prediction.choices)) +
           line("answer", prediction.answer);
}

std::string write_value(std::string_view key, const setup::WrittenQuantity& value) {
    return fmt::format("{} = {}\n", key, value.bare ? value.text : setup::toml_string(value.text));
}

std::string write_change(const LessonChange& change) {
    std::string text = "\n[[step.change]]\n" + line("part", change.part);
    for (const LessonChange::Value& value : change.values)
        text += write_value(value.key, value.written);
    return text;
}

std::string write_move(const LessonMove& move) {
    return "\n[step.move]\n" + line("part", move.part) + line("key", move.key) +
           write_value("from", move.from) + write_value("to", move.to) +
           fmt::format("shows = {}\n", list_of(move.shows));
}

/// A setup's own text with its tables moved below the step. Every table of a setup begins a line
/// with a bracket; so do the rows of a list, indented, which stay as they are.
std::string write_own_setup(const setup::Setup& setup) {
    const std::string text = setup::write_setup(setup);
    std::string moved = "\n[step.stage]\n";
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        const std::string_view one(text.data() + at, end - at);
        at = end + 1;
        if (one.substr(0, 2) == "[[")
            moved += fmt::format("[[step.stage.{}\n", one.substr(2));
        else if (one.substr(0, 1) == "[")
            moved += fmt::format("[step.stage.{}\n", one.substr(1));
        else
            moved += fmt::format("{}\n", one);
    }
    return moved;
}

std::string write_step(const LessonStep& step) {
    std::string text = "\n[[step]]\n" + line("title", setup::short_text(step.title)) +
                       line("setup", step.setup_name);
    if (step.progress)
        text += fmt::format("progress = {}\n", setup::exact_number(*step.progress));
    text += line("axis", step.axis);
    if (step.view)
        text += fmt::format("view = \"{}\"\n",
                            setup::body_view_names()[static_cast<std::size_t>(*step.view)]);
    text += fmt::format("prompt = {}\n", setup::toml_words(step.prompt));
    if (step.hide)
        text += fmt::format("hide = {}\n", list_of(*step.hide));
    if (!step.leave_out.empty())
        text += fmt::format("leave_out = {}\n", list_of(step.leave_out));
    text += line("reveal", step.reveal);
    if (step.key != step.prediction.of)
        text += line("key", step.key);
    text += line("also", step.also) + line("note", step.note);
    if (step.time_s)
        text += fmt::format("time = \"{}\"\n",
                            setup::exact_quantity(*step.time_s, setup::Dimension::time, "s"));
    text += write_prediction(step.prediction);
    for (const LessonChange& change : step.changes)
        text += write_change(change);
    if (step.move)
        text += write_move(*step.move);
    if (step.own)
        text += write_own_setup(*step.own);
    return text;
}

} // namespace

std::string_view name_of(StageMark mark) {
    return kMarkNames[static_cast<std::size_t>(mark)];
}

std::vector<std::string_view> mark_names() {
    return {std::begin(kMarkNames), std::end(kMarkNames)};
}

std::vector<std::string_view> prediction_names() {
    return {std::begin(kPredictionNames), std::end(kPredictionNames)};
}

StageMarks with_tell_tales(const StageMarks& hidden) {
    StageMarks all = hidden;
    const auto add = [&all](StageMark when, std::initializer_list<StageMark> also) {
        if (all.count(when) != 0)
            all.insert(also);
    };
    add(StageMark::axis, {StageMark::arms, StageMark::torques, StageMark::reaction});
    add(StageMark::effort, {StageMark::reaction, StageMark::torques});
    add(StageMark::loads, {StageMark::reaction, StageMark::torques});
    add(StageMark::torques, {StageMark::strip, StageMark::muscles});
    add(StageMark::muscles, {StageMark::strip});
    return all;
}

StageMarks hidden_marks(const LessonStep& step) {
    if (step.hide)
        return with_tell_tales(*step.hide);
    if (step.prediction.kind == PredictionKind::none)
        return {};
    return with_tell_tales({StageMark::effort, StageMark::torques});
}

std::string write_lesson(const Lesson& lesson) {
    std::string text = setup::write_head(lesson.head, "lesson");
    for (const LessonStep& step : lesson.steps)
        text += write_step(step);
    return text;
}

} // namespace steelyard::lesson
