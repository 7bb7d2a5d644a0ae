#include "lesson/glossary.h"

#include "lesson/lesson_names.h"
#include "lesson/lesson_words.h"
#include "setup/toml/toml_reader.h"

#include <algorithm>

namespace steelyard::lesson {

namespace {

std::string lowered(std::string_view text) {
    std::string low(text);
    for (char& c : low)
        if (c >= 'A' && c <= 'Z')
            c = static_cast<char>(c - 'A' + 'a');
    return low;
}

Term read_term(setup::TomlReader& table) {
    Term term;
    term.name = table.short_text("name", setup::Need::required).value_or("");
    term.also = table.texts("also").value_or(std::vector<std::string>{});
    term.typed = table.texts("typed").value_or(std::vector<std::string>{});
    term.says = table.text("says", setup::Need::required).value_or("");
    term.formula = table.text("formula").value_or("");
    term.setup_name = table.text("setup").value_or("");
    term.marks = read_marks(table, "marks");
    term.axis = table.text("axis").value_or("");
    term.source = table.text("source", setup::Need::required).value_or("");
    term.skill = table.text("skill").value_or("");
    if (auto stage = stage_of(term); !stage)
        table.add_error("setup", stage.error().found, stage.error().expected, stage.error().mend);
    table.finish();
    return term;
}

/// How well a term answers a search: its name begins with it, another name does, its name holds it,
/// another name does, or none.
constexpr int kNearest = 0;
constexpr int kNotFound = 4;

int distance(const Term& term, const std::string& low) {
    int best = kNotFound;
    const auto look = [&](const std::string& name, int other) {
        const std::size_t at = lowered(name).find(low);
        if (at != std::string::npos)
            best = std::min(best, (at == 0 ? 0 : 2) + other);
    };
    look(term.name, 0);
    for (const auto* names : {&term.also, &term.typed})
        for (const std::string& name : *names)
            look(name, 1);
    return best;
}

} // namespace

tl::expected<std::vector<Term>, setup::InputError>
read_glossary(const std::filesystem::path& path) {
    const auto document = setup::read_toml_file(path);
    if (!document)
        return tl::make_unexpected(document.error());
    setup::InputErrors errors;
    setup::TomlReader top(*document, errors);
    std::vector<Term> terms;
    for (setup::TomlReader& table : top.tables("term", setup::Need::required))
        terms.push_back(read_term(table));
    top.finish();
    if (!errors.empty())
        return tl::make_unexpected(setup::first_of(errors));
    return terms;
}

std::vector<std::size_t> terms_with(const std::vector<Term>& terms, std::string_view text) {
    const std::string low = lowered(text);
    std::vector<std::size_t> found;
    for (int wanted = kNearest; wanted < kNotFound; ++wanted)
        for (std::size_t i = 0; i < terms.size(); ++i)
            if (distance(terms[i], low) == wanted)
                found.push_back(i);
    return found;
}

tl::expected<std::optional<LessonStage>, setup::InputError> stage_of(const Term& term) {
    if (term.setup_name.empty())
        return std::nullopt;
    LessonStep step;
    step.setup_name = term.setup_name;
    step.axis = term.axis;
    return named_setup(term.setup_name).and_then([&](const setup::Setup& base) {
        return make_stage(step, nullptr, &base).map([](const LessonStage& stage) {
            return std::optional(stage);
        });
    });
}

StageMarks left_out(const Term& term) {
    StageMarks out;
    if (term.marks.empty())
        return out;
    for (std::size_t i = 0; i < mark_names().size(); ++i) {
        const auto mark = static_cast<StageMark>(i);
        if (mark != StageMark::axis && term.marks.count(mark) == 0)
            out.insert(mark);
    }
    return out;
}

} // namespace steelyard::lesson
