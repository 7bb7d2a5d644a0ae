#include "cli/study/study.h"

#include "cli/study/record_folder.h"
#include "cli/study/terminal.h"
#include "learner/time/wall_clock.h"
#include "setup/files/data_folder.h"
#include "setup/toml/spelling.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <ostream>

namespace steelyard::cli {

namespace {

using learner::Learner;

constexpr const char* kOtherFolder = " (--data DIR names another folder.)";

std::string list_of(const std::vector<Learner>& learners) {
    std::string names;
    for (const Learner& known : learners)
        names += (names.empty() ? "" : ", ") + known.name;
    return names;
}

ExitStatus tell_unknown(const std::string& name, const std::vector<Learner>& learners,
                        const Streams& streams) {
    std::vector<std::string_view> names;
    for (const Learner& known : learners)
        names.push_back(known.name);
    const std::string meant = setup::nearest_spelling(name, names);
    streams.err << wrapped(fmt::format(
        "There is no learner named {}.{} {}To add one: --learner \"{}\" --new", name,
        meant.empty() ? "" : fmt::format(" Did you mean {}?", meant),
        learners.empty() ? "" : fmt::format("Known here: {}. ", list_of(learners)), name));
    return ExitStatus::bad_input;
}

tl::expected<Learner, ExitStatus> add_learner(learner::Record& record, const std::string& name,
                                              const Streams& streams) {
    auto added = record.add_learner(name, learner::wall_clock());
    if (!added)
        return tl::make_unexpected(tell(added.error(), streams));
    streams.out << fmt::format("A record for {} begins, in {}.\n", added->name,
                               record.folder().string());
    return *added;
}

/// Nobody was named: the only learner there is, or whom the person at the keyboard says.
tl::expected<Learner, ExitStatus> choose_learner(learner::Record& record,
                                                 const std::vector<Learner>& learners, bool may_add,
                                                 const Streams& streams) {
    if (learners.size() == 1)
        return learners.front();
    const bool nobody = learners.empty();
    if (nobody && !may_add) {
        streams.err << "Nobody has a record here yet. `steelyard learn` begins one.\n";
        return tl::make_unexpected(ExitStatus::bad_input);
    }
    if (!can_answer(streams)) {
        streams.err << (nobody ? std::string("Say who learns: --learner NAME --new\n")
                               : fmt::format("Say who learns: --learner NAME. Known here: {}.\n",
                                             list_of(learners)));
        return tl::make_unexpected(ExitStatus::bad_input);
    }
    if (!nobody)
        streams.out << fmt::format("Known here: {}.\n", list_of(learners));
    std::string name;
    do {
        if (!read_line(streams, nobody ? "Your name, for the record on this machine" : "Who learns",
                       name))
            return tl::make_unexpected(ExitStatus::ok);
    } while (name.empty());
    auto found = record.learner_named(name);
    if (!found)
        return tl::make_unexpected(tell(found.error(), streams));
    if (*found)
        return **found;
    if (nobody)
        return add_learner(record, name, streams);
    return tl::make_unexpected(tell_unknown(name, learners, streams));
}

tl::expected<Learner, ExitStatus> learner_of(learner::Record& record, const LearnerOptions& options,
                                             bool may_add, const Streams& streams) {
    const auto learners = record.learners();
    if (!learners)
        return tl::make_unexpected(tell(learners.error(), streams));
    if (options.learner.empty())
        return choose_learner(record, *learners, may_add, streams);
    const auto found = record.learner_named(options.learner);
    if (!found)
        return tl::make_unexpected(tell(found.error(), streams));
    if (*found)
        return **found;
    if (may_add && options.is_new)
        return add_learner(record, options.learner, streams);
    return tl::make_unexpected(tell_unknown(options.learner, *learners, streams));
}

/// The option that mends it, for a message that is also shown where there are no options.
const char* option_for(learner::Trouble trouble) {
    using learner::Trouble;
    switch (trouble) {
    case Trouble::cannot_open:
    case Trouble::read_only:
    case Trouble::newer:
    case Trouble::foreign:
        return kOtherFolder;
    case Trouble::unnamed:
        return " (--learner NAME)";
    case Trouble::full:
    case Trouble::busy:
    case Trouble::damaged:
    case Trouble::refused:
        break;
    }
    return "";
}

} // namespace

void add_learner_options(CLI::App& command, LearnerOptions& options) {
    command.add_option("--learner", options.learner, "who, where several learn on this machine")
        ->type_name("NAME");
    command.add_flag("--new", options.is_new, "begin a record for a new learner");
    add_data_option(command, options.data);
    add_units_option(command, options.questions);
    add_bank_option(command, options.questions);
}

ExitStatus tell(const learner::RecordError& error, const Streams& streams) {
    streams.err << wrapped(error.message + option_for(error.trouble));
    const bool refused =
        error.trouble == learner::Trouble::refused || error.trouble == learner::Trouble::unnamed ||
        error.trouble == learner::Trouble::newer || error.trouble == learner::Trouble::foreign;
    return refused ? ExitStatus::bad_input : ExitStatus::failed;
}

tl::expected<StudyCourse, ExitStatus> open_course(const LearnerOptions& options,
                                                  const Streams& streams) {
    auto bank = std::make_unique<problems::Bank>(open_bank(options.questions, streams));
    auto course = learner::load_course(*bank, setup::data_folder() / "assets" / "learner",
                                       units_of(options.questions).value_or(setup::UnitSystem::si));
    if (!course) {
        streams.err << to_text(course.error()) << '\n';
        return tl::make_unexpected(ExitStatus::bad_input);
    }
    return StudyCourse{std::move(bank), std::move(*course)};
}

tl::expected<learner::Record, ExitStatus> open_record(const LearnerOptions& options,
                                                      const Streams& streams) {
    auto opened = learner::open_record(options.data.empty() ? learner::usual_record_folder()
                                                            : std::filesystem::path(options.data),
                                       learner::wall_clock());
    if (!opened)
        return tl::make_unexpected(tell(opened.error(), streams));
    for (const std::string& notice : opened->notices)
        streams.err << wrapped(notice + (opened->record.is_writable() ? "" : kOtherFolder));
    opened->record.tell_when_waiting([&err = streams.err] {
        err << "Another Steelyard is writing to the record, perhaps a long import. Waiting "
               "for it ...\n"
            << std::flush;
    });
    return std::move(opened->record);
}

tl::expected<Study, ExitStatus> open_study(const LearnerOptions& options, const Streams& streams) {
    auto shelf = open_course(options, streams);
    if (!shelf)
        return tl::make_unexpected(shelf.error());
    auto record = open_record(options, streams);
    if (!record)
        return tl::make_unexpected(record.error());
    auto who = learner_of(*record, options, record->is_writable(), streams);
    if (!who)
        return tl::make_unexpected(who.error());
    auto standing = record->standing(who->id, shelf->course, learner::wall_clock());
    if (!standing)
        return tl::make_unexpected(tell(standing.error(), streams));
    if (const std::string notice = clock_notice(*standing, learner::wall_clock()); !notice.empty())
        streams.err << wrapped(notice);
    return Study{std::move(*shelf), std::move(*record), std::move(*who), std::move(*standing)};
}

tl::expected<learner::Learner, ExitStatus>
known_learner(learner::Record& record, const LearnerOptions& options, const Streams& streams) {
    return learner_of(record, options, false, streams);
}

void tell_notices(learner::Record& record, const Streams& streams) {
    for (const std::string& notice : record.take_notices())
        streams.err << wrapped(notice);
}

void back_up(learner::Record& record, const Streams& streams) {
    if (const auto done = record.back_up_if_due(learner::wall_clock()); !done)
        streams.err << wrapped("No backup was made: " + done.error().message);
    tell_notices(record, streams);
}

} // namespace steelyard::cli
