#include "app/workshop/show_model.h"

#include <algorithm>
#include <cassert>

namespace steelyard::app {

namespace {

using lesson::PredictionKind;

constexpr std::size_t kLongestEntry = 16;

const lesson::Prediction& prediction_of(const ShowModel& show) {
    return show.lesson_step().prediction;
}

StepProgress& present(ShowModel& show) {
    return show.progress[show.step];
}

void enter_step(ShowModel& show, std::size_t step) {
    show.step = step;
    show.row = 0;
    show.entry.clear();
    show.message.clear();
}

bool is_digit(unsigned character) {
    return character >= '0' && character <= '9';
}

bool begins_number(unsigned character) {
    return is_digit(character) || character == '-' || character == '.';
}

/// Hands that an entry counts: letters that were typed among its digits count nothing.
int count_of(const std::string& entry) {
    int count = 0;
    for (const char character : entry)
        if (is_digit(static_cast<unsigned char>(character)))
            count = std::min(10 * count + (character - '0'), kMostHands);
    return count;
}

/// Puts a number that was typed among the guesses, or says what is wrong with it.
void take_guess(ShowModel& show) {
    const auto sought = words_of(show, show.step).sought;
    const std::string unit = asked_unit(show, show.step);
    const auto dimension = sought ? sought->dimension : setup::Dimension::number;
    const auto value = setup::parse_quantity(show.entry, dimension, {unit, true});
    if (!value) {
        show.message = setup::to_text(value.error());
        return;
    }
    auto& guesses = present(show).guesses_SI;
    if (guesses.size() == kMostGuesses)
        guesses.erase(guesses.begin());
    guesses.push_back(*value);
    show.entry.clear();
    show.message.clear();
}

/// A number that was not yet entered counts if it can be read; else it is dropped.
void end_entry(ShowModel& show) {
    if (!show.entry.empty() && prediction_of(show).kind == PredictionKind::number)
        take_guess(show);
    show.entry.clear();
    show.message.clear();
}

void go_on_showing(ShowModel& show) {
    if (!present(show).revealed && show.lesson_step().has_reveal())
        present(show).revealed = true;
    else if (!show.at_end())
        enter_step(show, show.step + 1);
}

void apply(ShowModel& show, const GoOn& /*intent*/) {
    end_entry(show);
    go_on_showing(show);
}

void apply(ShowModel& show, const GoBack& /*intent*/) {
    end_entry(show);
    if (show.step > 0)
        enter_step(show, show.step - 1);
}

void apply(ShowModel& show, const GoToStep& intent) {
    end_entry(show);
    if (intent.step < show.lesson->steps.size())
        enter_step(show, intent.step);
}

void apply(ShowModel& show, const TurnReveal& /*intent*/) {
    end_entry(show);
    if (show.lesson_step().has_reveal())
        present(show).revealed = !present(show).revealed;
}

/// Digits count hands of the present answer, each adding a digit to what is typed; a digit of a
/// choice is the answer's number; a number takes what a number with a unit can have.
void apply(ShowModel& show, const TypeCharacter& intent) {
    const lesson::Prediction& prediction = prediction_of(show);
    const unsigned character = intent.character;
    if (prediction.kind == PredictionKind::choice && is_digit(character)) {
        const std::size_t number = character - '0';
        if (!present(show).revealed && number >= 1 && number <= prediction.choices.size())
            present(show).picked = number - 1;
    }
    const bool fits = show.entry.size() < kLongestEntry && character >= ' ' && character < 127;
    if (!show.takes_number() || !fits)
        return;
    if (prediction.kind == PredictionKind::number) {
        if (!show.entry.empty() || begins_number(character))
            show.entry += static_cast<char>(character);
    } else if (!show.entry.empty() || is_digit(character)) {
        show.entry += static_cast<char>(character);
        present(show).hands[show.row] = count_of(show.entry);
    }
}

void apply(ShowModel& show, const Enter& /*intent*/) {
    if (show.entry.empty())
        return;
    if (prediction_of(show).kind == PredictionKind::number)
        return take_guess(show);
    show.entry.clear();
    if (show.row + 1 < prediction_of(show).choices.size())
        ++show.row;
}

void apply(ShowModel& show, const TakeBack& /*intent*/) {
    show.message.clear();
    StepProgress& here = present(show);
    const PredictionKind kind = prediction_of(show).kind;
    if (here.revealed && kind != PredictionKind::number)
        return;
    if (!show.entry.empty()) {
        show.entry.pop_back();
        if (kind == PredictionKind::hands)
            here.hands[show.row] = count_of(show.entry);
    } else if (kind == PredictionKind::hands) {
        here.hands[show.row] = 0;
    } else if (kind == PredictionKind::choice) {
        here.picked.reset();
    } else if (!here.guesses_SI.empty()) {
        here.guesses_SI.pop_back();
    }
}

void apply(ShowModel& show, const MoveRow& intent) {
    const auto count = static_cast<int>(prediction_of(show).choices.size());
    if (count == 0 || present(show).revealed)
        return;
    show.entry.clear();
    const int row = std::clamp(static_cast<int>(show.row) + intent.by, 0, count - 1);
    show.row = static_cast<std::size_t>(row);
    if (prediction_of(show).kind == PredictionKind::choice)
        present(show).picked = show.row;
}

void apply(ShowModel& show, const PressAnswer& intent) {
    if (present(show).revealed || intent.index >= prediction_of(show).choices.size())
        return;
    show.entry.clear();
    show.row = intent.index;
    if (prediction_of(show).kind == PredictionKind::choice)
        present(show).picked = intent.index;
    else
        present(show).hands[intent.index] =
            std::clamp(present(show).hands[intent.index] + intent.by, 0, kMostHands);
}

void apply(ShowModel& show, const TurnBlank& /*intent*/) {
    show.blank = !show.blank;
}

void apply(ShowModel& show, const TurnFreeze& /*intent*/) {
    if (show.frozen)
        show.frozen.reset();
    else
        show.frozen = show.shown();
}

void apply(ShowModel& show, const AskToLeave& /*intent*/) {
    show.asks_to_leave = true;
}

void apply(ShowModel& /*show*/, const Stay& /*intent*/) {}

void apply(ShowModel& show, const PassTime& intent) {
    present(show).spent_s += intent.seconds;
    show.since_typed_s += intent.seconds;
}

bool is_time(const ShowIntent& intent) {
    return std::holds_alternative<PassTime>(intent);
}

} // namespace

ShowModel make_show(lesson::Lesson lesson, std::vector<mechanics::Muscle> muscles,
                    setup::UnitSystem units) {
    ShowModel show;
    show.lesson = std::make_shared<const lesson::Lesson>(std::move(lesson));
    show.muscles = std::make_shared<const std::vector<mechanics::Muscle>>(std::move(muscles));
    show.units = units;
    for (const lesson::LessonStep& step : show.lesson->steps) {
        auto solved = lesson::solve_stage(step.stage);
        assert(solved); // a lesson that was read can be solved
        show.solved.push_back(std::move(*solved));
        StepProgress progress;
        progress.hands.assign(step.prediction.choices.size(), 0);
        show.progress.push_back(std::move(progress));
    }
    return show;
}

StepWords words_of(const ShowModel& show, std::size_t step) {
    const lesson::LessonStep& lesson_step = show.lesson->steps[step];
    const lesson::QuantitySource source = show.source(step);
    StepWords words;
    words.prompt = lesson::filled_text(lesson_step.prompt, source, show.units).value_or("");
    words.reveal = lesson::filled_text(lesson_step.reveal, source, show.units).value_or("");
    if (const auto right = lesson::right_choice(lesson_step.prediction, source, show.units))
        words.right = *right;
    if (!lesson_step.key.empty())
        if (const auto key = lesson::read_quantity(lesson_step.key, source)) {
            words.key = lesson::quantity_text(*key, show.units);
            words.key_name = lesson::spoken_name(lesson_step.key, source);
        }
    if (!lesson_step.prediction.of.empty())
        if (const auto sought = lesson::read_quantity(lesson_step.prediction.of, source))
            words.sought = *sought;
    return words;
}

std::string asked_unit(const ShowModel& show, std::size_t step) {
    const auto sought = words_of(show, step).sought;
    return sought ? lesson::quantity_text(*sought, show.units).unit : std::string();
}

bool ShowModel::takes_number() const {
    const PredictionKind kind = lesson_step().prediction.kind;
    return kind == PredictionKind::number || (kind == PredictionKind::hands && !now().revealed);
}

bool ShowModel::awaits_number() const {
    return !entry.empty() || (takes_number() && !now().revealed);
}

void update(ShowModel& show, const ShowIntent& intent) {
    if (!is_time(intent)) {
        show.asks_to_leave = false;
        show.since_typed_s = std::holds_alternative<TypeCharacter>(intent) ? 0.0 : kQuiet_s;
    }
    std::visit([&](const auto& one) { apply(show, one); }, intent);
}

} // namespace steelyard::app
