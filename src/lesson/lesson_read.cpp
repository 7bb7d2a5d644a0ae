#include "lesson/lesson_change_read.h"
#include "lesson/lesson_move.h"
#include "lesson/lesson_names.h"
#include "lesson/lesson_quantity.h"
#include "lesson/lesson_words.h"
#include "setup/files/data_folder.h"
#include "setup/files/folder.h"
#include "setup/muscle/muscle_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

namespace steelyard::lesson {
namespace {

namespace fs = std::filesystem;

/// What lessons are read with; setups and muscles are read once for all of them.
class LessonSources {
public:
    tl::expected<const std::vector<mechanics::Muscle>*, setup::InputError> muscles() {
        if (!muscles_) {
            auto read = setup::shipped_muscles();
            if (!read)
                return tl::make_unexpected(read.error());
            muscles_ = *std::move(read);
        }
        return &*muscles_;
    }

    tl::expected<const setup::Setup*, setup::InputError> setup(const fs::path& path) {
        const auto known = setups_.find(path.string());
        if (known != setups_.end())
            return &known->second;
        auto read = setup::read_setup(path);
        if (!read)
            return tl::make_unexpected(read.error());
        return &setups_.emplace(path.string(), *std::move(read)).first->second;
    }

private:
    std::optional<std::vector<mechanics::Muscle>> muscles_;
    std::map<std::string, setup::Setup> setups_;
};

constexpr std::size_t kFewestChoices = 2;
constexpr std::size_t kMostChoices = 5;

Prediction read_prediction(setup::TomlReader& step) {
    Prediction prediction;
    auto table = step.table("predict");
    if (!table)
        return prediction;
    const auto kind = table->choice("ask", prediction_names(), setup::Need::required);
    if (kind)
        prediction.kind = static_cast<PredictionKind>(*kind + 1);
    if (prediction.kind == PredictionKind::number) {
        prediction.of = table->text("of", setup::Need::required).value_or("");
    } else if (kind) {
        prediction.choices =
            table->texts("choices", setup::Need::required).value_or(std::vector<std::string>{});
        prediction.answer = table->text("answer").value_or("");
        const std::size_t count = prediction.choices.size();
        if (table->has("choices") && (count < kFewestChoices || count > kMostChoices))
            table->add_error("choices", fmt::format("{} choices", count), "two to five choices",
                             "More cannot be read from the back row.");
    }
    table->finish();
    return prediction;
}

/// A setup that stands in the lesson itself: its own table read as a document.
std::optional<setup::Setup> read_own_setup(setup::TomlReader& step, setup::InputErrors& errors) {
    const setup::TomlNode* node = step.node("stage");
    if (node == nullptr)
        return std::nullopt;
    if (!std::holds_alternative<setup::TomlTable>(node->value)) {
        step.add_error("stage", setup::describe(*node), "a table [step.stage] with a whole setup");
        return std::nullopt;
    }
    auto setup = setup::setup_of(setup::TomlDocument{step.file(), *node});
    if (setup)
        return *std::move(setup);
    setup::InputError error = setup.error();
    error.key = step.path_of("stage") + "." + error.key;
    if (error.line == 0)
        error.line = node->line;
    errors.push_back(std::move(error));
    return std::nullopt;
}

LessonStep read_step(setup::TomlReader& table, setup::InputErrors& errors) {
    LessonStep step;
    step.title = table.short_text("title").value_or("");
    step.setup_name = table.text("setup").value_or("");
    step.own = read_own_setup(table, errors);
    if (table.has("setup") && table.has("stage"))
        table.add_error("stage", "both setup and stage", "one of the two",
                        "Name a setup, or write it out below [step.stage].");
    for (setup::TomlReader& change : table.tables("change"))
        step.changes.push_back(read_change(change));
    step.progress = table.number("progress");
    if (step.progress && !(*step.progress >= 0.0 && *step.progress <= 1.0))
        table.add_error("progress", setup::describe(*table.node("progress")),
                        "a part of the path from 0 to 1, or from \"0 %\" to \"100 %\"");
    step.axis = table.text("axis").value_or("");
    if (const auto view = table.choice("view", setup::body_view_names()))
        step.view = static_cast<setup::BodyView>(*view);
    step.prompt = table.text("prompt", setup::Need::required).value_or("");
    step.prediction = read_prediction(table);
    if (table.has("hide"))
        step.hide = read_marks(table, "hide");
    else
        table.node("hide");
    step.leave_out = read_marks(table, "leave_out");
    step.reveal = table.text("reveal").value_or("");
    step.key = table.text("key").value_or(step.prediction.of);
    step.also = table.text("also").value_or("");
    step.move = read_move(table);
    step.note = table.text("note").value_or("");
    if (const auto time = table.quantity("time", setup::Dimension::time))
        step.time_s = time->value_SI;
    table.finish();
    return step;
}

/// Makes the stages of the steps and tries everything that they name.
class StageMaker {
public:
    StageMaker(const std::vector<fs::path>& folders, LessonSources& sources,
               setup::InputErrors& errors)
        : folders_(folders), sources_(sources), errors_(errors) {}

    void make(Lesson& lesson, std::vector<setup::TomlReader>& tables) {
        std::optional<SolvedStage> before;
        for (std::size_t i = 0; i < lesson.steps.size(); ++i) {
            LessonStep& step = lesson.steps[i];
            const LessonStage* stage_before = i > 0 ? &lesson.steps[i - 1].stage : nullptr;
            if (!make_one(step, stage_before, tables[i]))
                return;
            auto solved = solve_stage(step.stage); // make_stage has solved it before
            try_names(step, {&*solved, before ? &*before : nullptr, nullptr}, lesson.head.units,
                      tables[i]);
            before = std::move(*solved);
        }
    }

private:
    bool make_one(LessonStep& step, const LessonStage* before, setup::TomlReader& table) {
        const setup::Setup* base = nullptr;
        if (!step.setup_name.empty()) {
            base = named_setup(step.setup_name, table);
            if (base == nullptr)
                return false;
        }
        auto stage = make_stage(step, before, base);
        if (stage) {
            step.stage = *std::move(stage);
            return true;
        }
        setup::InputError error = stage.error();
        error.file = table.file();
        error.line = error.line > 0 ? error.line : table.line();
        error.key = table.path_of(error.key);
        errors_.push_back(std::move(error));
        return false;
    }

    const setup::Setup* named_setup(const std::string& name, setup::TomlReader& table) {
        const auto found = find_setup(name, folders_);
        if (!found) {
            table.add_error("setup", found.error().found, found.error().expected,
                            found.error().mend);
            return nullptr;
        }
        const auto setup = sources_.setup(*found);
        if (!setup) {
            errors_.push_back(setup.error());
            return nullptr;
        }
        return *setup;
    }

    void try_names(const LessonStep& step, QuantitySource source, setup::UnitSystem units,
                   setup::TomlReader& table) {
        if (!source.now->is_lever()) {
            const auto muscles = sources_.muscles();
            if (!muscles) {
                errors_.push_back(muscles.error());
                return;
            }
            source.muscles = *muscles;
        }
        const auto check = [&](const char* key, const std::string& text, const auto& result) {
            if (!result)
                table.add_error(key, fmt::format("\"{}\"", text), "quantities of this stage",
                                result.error());
        };
        check("prompt", step.prompt, filled_text(step.prompt, source, units));
        check("reveal", step.reveal, filled_text(step.reveal, source, units));
        if (!step.key.empty())
            check(step.key == step.prediction.of ? "predict" : "key", step.key,
                  read_quantity(step.key, source));
        check("predict", step.prediction.answer, right_choice(step.prediction, source, units));
        if (step.move)
            if (auto wrong = try_move(step, source))
                table.add_error(wrong->key, wrong->found, wrong->expected, wrong->mend);
    }

    const std::vector<fs::path>& folders_;
    LessonSources& sources_;
    setup::InputErrors& errors_;
};

tl::expected<Lesson, setup::InputError> lesson_of(const setup::TomlDocument& document,
                                                  const std::vector<fs::path>& folders,
                                                  LessonSources& sources) {
    Lesson lesson;
    setup::InputErrors errors;
    setup::TomlReader top(document, errors);
    const auto kind = top.choice("kind", {"lesson"}, setup::Need::required);
    if (!kind)
        return tl::make_unexpected(setup::first_of(errors));
    lesson.head = setup::read_head(top);
    std::vector<setup::TomlReader> tables = top.tables("step", setup::Need::required);
    for (setup::TomlReader& table : tables)
        lesson.steps.push_back(read_step(table, errors));
    top.finish();
    if (errors.empty() && lesson.steps.empty())
        top.add_error("step", "no step", "at least one [[step]]");
    if (errors.empty())
        StageMaker(folders, sources, errors).make(lesson, tables);
    if (!errors.empty())
        return tl::make_unexpected(setup::first_of(errors));
    return lesson;
}

tl::expected<Lesson, setup::InputError> read_with(const fs::path& path, LessonSources& sources) {
    return setup::read_toml_file(path).and_then([&](const setup::TomlDocument& document) {
        return lesson_of(document, setup_folders(path.parent_path()), sources);
    });
}

bool comes_before(const LessonListing& one, const LessonListing& other) {
    const auto rank = [](const LessonListing& listing) {
        return listing.lesson ? std::tuple(0, listing.lesson->head.order, listing.lesson->head.name,
                                           listing.path.string())
                              : std::tuple(1, 0, std::string(), listing.path.string());
    };
    return rank(one) < rank(other);
}

} // namespace

std::vector<fs::path> setup_folders(const fs::path& lesson_folder) {
    const fs::path shipped = setup::data_folder() / "assets" / "setups";
    std::vector<fs::path> folders{shipped, shipped / "body"};
    // The person's own come last, so that none takes the place of one that a lesson means.
    if (const fs::path own = setup::own_folder(); !own.empty())
        folders.push_back(own / "setups");
    if (!lesson_folder.empty())
        folders.insert(folders.begin(), lesson_folder);
    return folders;
}

tl::expected<Lesson, setup::InputError> parse_lesson(std::string_view text, const std::string& file,
                                                     const std::vector<fs::path>& folders) {
    LessonSources sources;
    return setup::parse_toml(text, file).and_then([&](const setup::TomlDocument& document) {
        return lesson_of(document, folders, sources);
    });
}

tl::expected<Lesson, setup::InputError> read_lesson(const fs::path& path) {
    LessonSources sources;
    return read_with(path, sources);
}

tl::expected<std::vector<LessonListing>, setup::InputError> list_lessons(const fs::path& folder) {
    const auto paths = setup::files_ending(folder, kLessonEnding);
    if (!paths)
        return tl::make_unexpected(paths.error());
    LessonSources sources;
    std::vector<LessonListing> listings;
    for (const fs::path& path : *paths)
        listings.push_back({path, read_with(path, sources)});
    std::sort(listings.begin(), listings.end(), comes_before);
    return listings;
}

} // namespace steelyard::lesson
