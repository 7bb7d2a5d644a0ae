#include "app/body/body_spread.h"

#include "mechanics/range/spread.h"
#include "mechanics/range/sweep.h"
#include "setup/body/segment_table_file.h"

#include <algorithm>
#include <future>

namespace steelyard::app {

namespace {

/// What the spread is taken from: the person's column of their table.
tl::expected<mechanics::SpreadInput, std::string> spread_input(const setup::Person& person) {
    const auto tables = setup::shipped_segment_tables();
    if (!tables)
        return tl::unexpected(setup::to_text(tables.error()));
    const auto table = std::find_if(tables->begin(), tables->end(),
                                    [&](const auto& one) { return one.id == person.table; });
    if (table == tables->end())
        return tl::unexpected("There is no segment table '" + person.table + "'.");
    mechanics::SpreadInput input;
    input.column = person.sex == mechanics::Sex::female ? table->table.female : table->table.male;
    input.height_m = person.height_m;
    input.mass_kg = person.mass_kg;
    input.measured = person.measured;
    input.bodies = kSpreadBodies;
    return input;
}

} // namespace

TorqueSpread spread_through_range(const setup::BodySetup& setup, mechanics::Hinge hinge,
                                  const std::atomic<bool>& cancelled) {
    TorqueSpread spread;
    const auto input = spread_input(setup.person);
    if (!input) {
        spread.fault = input.error();
        return spread;
    }
    const mechanics::Exercise& exercise = setup.exercise;
    const std::size_t places = exercise.path ? kSpreadPlaces : 1;
    mechanics::BodyCase here = exercise.body_case;
    for (std::size_t i = 0; i < places && !cancelled; ++i) {
        if (exercise.path)
            here.pose =
                mechanics::pose_at(exercise.body_case.pose, *exercise.path,
                                   static_cast<double>(i) / static_cast<double>(kSpreadPlaces - 1));
        const auto band = mechanics::spread_of(
            *input, here, [&](const mechanics::BodyResult& one) { return one.muscle(hinge); });
        if (!band) {
            spread.fault = "The spread cannot be computed: " + band.error().key + " should be " +
                           band.error().expected + ".";
            return spread;
        }
        spread.band.low.push_back(band->low);
        spread.band.high.push_back(band->high);
        spread.median.push_back(band->middle);
    }
    return spread;
}

struct SpreadKeeper::Work {
    int version = -1;
    std::atomic<bool> cancelled{false};
    std::future<TorqueSpread> future;
    std::optional<TorqueSpread> found;

    ~Work() {
        cancelled = true;
        if (future.valid())
            future.wait();
    }
};

SpreadKeeper::SpreadKeeper() = default;
SpreadKeeper::~SpreadKeeper() = default;
SpreadKeeper::SpreadKeeper(SpreadKeeper&&) noexcept = default;
SpreadKeeper& SpreadKeeper::operator=(SpreadKeeper&&) noexcept = default;

void SpreadKeeper::ask(const setup::BodySetup& setup, mechanics::Hinge hinge, int version) {
    if (work_ && work_->version == version)
        return;
    work_ = std::make_unique<Work>();
    work_->version = version;
    work_->future = std::async(std::launch::async, [setup, hinge, &cancelled = work_->cancelled] {
        return spread_through_range(setup, hinge, cancelled);
    });
}

bool SpreadKeeper::is_of(int version) const {
    return work_ && work_->version == version;
}

void SpreadKeeper::drop() {
    work_.reset();
}

const TorqueSpread* SpreadKeeper::found() const {
    if (!work_)
        return nullptr;
    if (!work_->found && work_->future.valid() &&
        work_->future.wait_for(std::chrono::seconds(0)) == std::future_status::ready)
        work_->found = work_->future.get();
    return work_->found ? &*work_->found : nullptr;
}

bool SpreadKeeper::busy() const {
    return work_ && found() == nullptr;
}

} // namespace steelyard::app
