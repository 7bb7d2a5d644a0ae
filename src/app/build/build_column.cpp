#include "app/build/build_column.h"

#include "app/build/build_words.h"
#include "app/look/text_styles.h"
#include "app/widgets/buttons.h"
#include "app/widgets/column_pen.h"
#include "app/widgets/reading_row.h"
#include "app/widgets/typed_chips.h"
#include "app/widgets/word_row.h"
#include "mechanics/body/segments.h"
#include "setup/build/load_choices.h"
#include "setup/units/format_quantity.h"
#include "words/caution.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

/// Draws the rows one below the other and remembers what was asked for last.
class Builder {
public:
    Builder(const Style& style, const BodyModel& model, const BuildShown& shown,
            BuildColumnState& state, ColumnPen& pen)
        : style_(style), model_(model), setup_(model.state.setup), shown_(shown), state_(state),
          pen_(pen) {}

    void person();
    void carried();
    void loads();
    void add_load();
    void movement();
    void axes();
    void seen_from();
    std::optional<BodyIntent> intent() { return std::move(intent_); }

private:
    void edit(setup::ExerciseEdit edit) { intent_ = EditExercise{std::move(edit), 0}; }

    /// Draws a row. @return whether it is unfolded
    bool row(const BuildRow& row, const std::string& name, const std::string& value) {
        ImGui::PushID(static_cast<int>(row.index));
        if (draw_reading_row(style_, name, value, Role::ink, pen_, TextSize::body)) {
            const bool was_open = state_.open == row;
            state_.open = was_open ? std::nullopt : std::optional(row);
            state_.number.reset();
        }
        ImGui::PopID();
        return state_.open == row;
    }

    void caption(std::string_view words) {
        pen_.skip(16.0F);
        pen_.line(kCaption, words);
        pen_.skip(6.0F);
    }

    std::optional<std::size_t> words(const char* id, const std::vector<RowWord>& words) {
        pen_.skip(20.0F);
        ImVec2 at{pen_.left(), pen_.y()};
        const auto pressed = draw_word_row(style_, id, words, at, pen_.left() + pen_.width());
        pen_.skip_px(at.y - pen_.y());
        pen_.skip(12.0F);
        return pressed;
    }

    void numbers(const std::vector<BuildNumber>& numbers);
    void contact(std::size_t index, const mechanics::Contact& contact, bool last);
    void load(std::size_t index, const mechanics::Resistance& load);

    const Style& style_;
    const BodyModel& model_;
    const setup::BodySetup& setup_;
    const BuildShown& shown_;
    BuildColumnState& state_;
    ColumnPen& pen_;
    std::optional<BodyIntent> intent_;
};

/// Chips with the numbers; the one that is typed is a field.
void Builder::numbers(const std::vector<BuildNumber>& numbers) {
    std::vector<TypedChip> chips;
    TypedChipsState typing{std::nullopt, std::move(state_.typed)};
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        chips.push_back(
            {name_of(numbers[i]), value_of(setup_, numbers[i]), dimension_of(numbers[i])});
        if (state_.number == numbers[i])
            typing.open = i;
    }
    const bool was_open = typing.open.has_value();
    // A part has the same name among lengths and among masses.
    ImGui::PushID(static_cast<int>(numbers.front().field));
    if (const auto entered = draw_typed_chips(style_, chips, shown_.units, pen_, typing))
        edit(with_number(setup_, numbers[entered->index], entered->value_SI));
    ImGui::PopID();
    state_.typed = std::move(typing.typed);
    if (typing.open)
        state_.number = numbers[*typing.open];
    else if (was_open)
        state_.number.reset();
}

void Builder::person() {
    const setup::Person& person = setup_.person;
    if (!row({BuildRowKind::person}, "Person", person_words(person, shown_.units)))
        return;
    const bool is_man = person.sex == mechanics::Sex::male;
    if (const auto sex = words("sex", {{"woman", !is_man}, {"man", is_man}})) {
        setup::Person other = person;
        other.sex = *sex == 1 ? mechanics::Sex::male : mechanics::Sex::female;
        edit(setup::ChangePerson{other});
    }
    numbers(person_numbers());
    caption("Mass of a part of one side; 0 leaves it out");
    numbers(part_mass_numbers());
    if (!person.measured.empty() && words("table", {{"parts as the table has them", false}})) {
        setup::Person plain = person;
        plain.measured.clear();
        edit(setup::ChangePerson{plain});
    }
}

/// What one contact does, and how it can be changed.
void Builder::contact(std::size_t index, const mechanics::Contact& contact, bool last) {
    ImGui::PushID(static_cast<int>(index));
    const std::string name = touching_word(contact.segment, contact.patch);
    caption(contact.level_m == 0.0
                ? name
                : fmt::format("{}, at a height of {}", name,
                              setup::format_quantity(contact.level_m, setup::Dimension::length,
                                                     shown_.units)));
    std::vector<RowWord> can{{"stays in its place", contact.sticks}};
    if (!last)
        can.push_back({"let go", false});
    if (const auto pressed = words("contact", can)) {
        if (*pressed == 0)
            edit(setup::KeepContact{index, !contact.sticks});
        else
            edit(setup::LetGo{index});
    }
    ImGui::PopID();
}

void Builder::carried() {
    const mechanics::Support& support = setup_.exercise.body_case.support;
    if (!row({BuildRowKind::carried}, "Carried by", carried_words(support)))
        return;
    std::vector<RowWord> stances;
    for (const setup::BodySetup& stance : shown_.stances)
        stances.push_back({stance.head.name, false});
    caption("Take another stance");
    if (const auto taken = words("stance", stances))
        edit(setup::TakeStance{shown_.stances[*taken]});
    const auto* on = std::get_if<mechanics::OnContacts>(&support);
    if (on == nullptr)
        return;
    for (std::size_t i = 0; i < on->contacts.size(); ++i)
        contact(i, on->contacts[i], on->contacts.size() == 1);
    const std::vector<setup::TouchWith> could = setup::could_touch(setup_);
    std::vector<RowWord> others;
    for (const setup::TouchWith& touch : could)
        others.push_back({touching_word(touch.segment, touch.patch), false});
    caption("Touch something there with");
    if (const auto touched = words("touch", others))
        edit(could[*touched]);
}

/// Where a load is, what it could be instead, and its end.
void Builder::load(std::size_t index, const mechanics::Resistance& load) {
    const BuildRow here{BuildRowKind::load, index};
    if (!row(here, load.name, size_words(load, shown_.units)))
        return;
    ImGui::PushID(static_cast<int>(index));
    const auto choices_of = [&](std::size_t kind) {
        return setup::load_choices(kind, setup_.exercise.body_case.body, model_.solved.placement);
    };
    const std::size_t kind = load.kind.index();
    std::vector<setup::LoadChoice> choices = choices_of(kind);
    const std::string where = setup::where_is(load, choices);
    choices.erase(std::remove_if(choices.begin(), choices.end(),
                                 [](const auto& one) { return one.loads.size() != 1; }),
                  choices.end());
    std::vector<RowWord> places;
    for (const setup::LoadChoice& choice : choices)
        places.push_back({choice.where, choice.where == where});
    caption("Where");
    if (const auto chosen = words("where", places))
        edit(setup::ReplaceLoad{index, setup::with_size_of(load, choices[*chosen].loads.front())});
    std::vector<RowWord> kinds;
    for (const std::string& word : load_kind_words())
        kinds.push_back({word, kinds.size() == kind});
    caption("What");
    if (const auto chosen = words("what", kinds); chosen && *chosen != kind)
        edit(setup::ReplaceLoad{
            index, setup::with_size_of(load, choices_of(*chosen).front().loads.front())});
    if (words("remove", {{"remove", false}})) {
        edit(setup::DropLoad{index});
        state_.open.reset();
    }
    ImGui::PopID();
}

void Builder::loads() {
    const auto& loads = setup_.exercise.body_case.resistances;
    for (std::size_t i = 0; i < loads.size(); ++i)
        load(i, loads[i]);
}

void Builder::add_load() {
    if (!row({BuildRowKind::add_load}, "Add a load", "+"))
        return;
    const std::vector<std::string> kinds = load_kind_words();
    for (std::size_t kind = 0; kind < kinds.size(); ++kind) {
        const auto choices =
            setup::load_choices(kind, setup_.exercise.body_case.body, model_.solved.placement);
        std::vector<RowWord> places;
        for (const setup::LoadChoice& choice : choices)
            places.push_back({choice.where, false});
        pen_.skip(20.0F);
        pen_.line({TextSize::body, true, Role::ink}, kinds[kind]);
        pen_.skip(6.0F);
        if (const auto chosen = words(kinds[kind].c_str(), places)) {
            edit(setup::AddLoads{choices[*chosen].loads});
            state_.open =
                BuildRow{BuildRowKind::load, setup_.exercise.body_case.resistances.size()};
        }
    }
}

void Builder::movement() {
    using mechanics::PoseEnds;
    const mechanics::Exercise& exercise = setup_.exercise;
    if (!row({BuildRowKind::movement}, "Movement", movement_words(exercise)))
        return;
    const bool moves = model_.moves();
    if (const auto chosen = words("moves", {{"holds still", !moves}, {"moves", moves}}))
        edit(setup::Move{*chosen == 1, model_.progress});
    if (!moves)
        return;
    caption("Pulling a joint changes");
    const PoseEnds ends[] = {PoseEnds::both, PoseEnds::start, PoseEnds::end};
    if (const auto chosen = words("ends", {{"start and end", model_.posing == PoseEnds::both},
                                           {"the start", model_.posing == PoseEnds::start},
                                           {"the end", model_.posing == PoseEnds::end}}))
        intent_ = PoseApart{ends[*chosen]};
    caption("Tempo");
    if (const auto chosen = words("tempo", {{"so slowly that only weights count", !exercise.tempo},
                                            {"in these times", exercise.tempo.has_value()}}))
        edit(setup::SetTempo{*chosen == 0 ? std::nullopt : std::optional(mechanics::kUsualTempo)});
    if (exercise.tempo)
        numbers(tempo_numbers());
}

void Builder::axes() {
    const std::vector<mechanics::Hinge>& axes = setup_.axes;
    if (!row({BuildRowKind::axes}, "Axes compared", std::to_string(axes.size())))
        return;
    const auto label = [](mechanics::Hinge hinge) {
        return std::string(mechanics::hinge_info(hinge).label);
    };
    std::vector<RowWord> present;
    for (const mechanics::Hinge hinge : axes)
        present.push_back({label(hinge), false});
    caption(axes.size() > 1 ? "Press one to leave it out" : "At least one stays");
    if (const auto left_out = words("axes", present); left_out && axes.size() > 1) {
        std::vector<mechanics::Hinge> fewer = axes;
        fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(*left_out));
        edit(setup::CompareAxes{std::move(fewer)});
    }
    const std::vector<mechanics::Hinge> could = setup::could_compare(setup_, model_.solved);
    if (could.empty())
        return;
    std::vector<RowWord> others;
    for (const mechanics::Hinge hinge : could)
        others.push_back({label(hinge), false});
    caption("Compare also, the largest torque first");
    if (const auto added = words("others", others)) {
        std::vector<mechanics::Hinge> more = axes;
        more.push_back(could[*added]);
        edit(setup::CompareAxes{std::move(more)});
    }
}

void Builder::seen_from() {
    const std::vector<std::string_view>& names = setup::body_view_names();
    const auto present = static_cast<std::size_t>(setup_.view);
    if (!row({BuildRowKind::seen_from}, "Seen from", std::string(names[present])))
        return;
    std::vector<RowWord> views;
    for (const std::string_view name : names)
        views.push_back({std::string(name), views.size() == present});
    if (const auto chosen = words("views", views))
        edit(setup::LookFrom{static_cast<setup::BodyView>(*chosen)});
}

} // namespace

BuildWishes draw_build_column(const Style& style, const Layout& layout, const BodyModel& model,
                              const BuildShown& shown, BuildColumnState& state) {
    BuildWishes wishes;
    begin_face(style, layout, model.moves());
    ColumnPen pen(style, layout);
    wishes.face = draw_column_faces(style, layout, ColumnFace::make, pen);
    pen.skip(24.0F);
    if (!model.message.empty())
        pen.paragraph({TextSize::body, true, Role::wrong}, model.message);
    for (const std::string& fault : shown.faults)
        if (!fault.empty())
            pen.paragraph({TextSize::body, true, Role::wrong}, fault);
    Builder builder(style, model, shown, state, pen);
    builder.person();
    builder.carried();
    builder.loads();
    builder.add_load();
    builder.movement();
    builder.axes();
    builder.seen_from();
    wishes.intent = builder.intent();
    pen.skip(24.0F);
    if (!shown.notice.empty())
        pen.paragraph({TextSize::caption, true, Role::ink}, shown.notice);
    pen.paragraph(kCaption, "Pull joints, loads and pulleys on the figure; Save keeps the exercise "
                            "on your shelf.");
    pen.paragraph(kCaption, words::kCaution);
    wishes.play = end_face(style, layout, {model.moves(), shown.playing}, pen);
    return wishes;
}

} // namespace steelyard::app
