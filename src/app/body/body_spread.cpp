#include "app/body/body_spread.h"

#include "mechanics/range/spread.h"
#include "mechanics/range/sweep.h"
#include "setup/body/segment_table_file.h"

#include <algorithm>
#include <memory>
#include <utility>

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

/// Bodies that are solved in one piece of the work.
constexpr std::size_t kBodiesInPiece = 250;

/// A spread while it is computed, place after place.
class Spreading {
public:
    Spreading(const setup::BodySetup& setup, mechanics::Hinge hinge)
        : exercise_(setup.exercise), hinge_(hinge), input_(spread_input(setup.person)) {}

    std::optional<TorqueSpread> go_on() {
        if (!input_)
            return refused(input_.error());
        if (!here_)
            begin_place();
        if (const auto done = here_->go_on(kBodiesInPiece); !done)
            return refused("The spread cannot be computed: " + done.error().key + " should be " +
                           done.error().expected + ".");
        if (!here_->is_complete())
            return std::nullopt;
        const mechanics::Band90 band = here_->band();
        spread_.band.low.push_back(band.low);
        spread_.band.high.push_back(band.high);
        spread_.median.push_back(band.middle);
        here_.reset();
        if (spread_.median.size() < places())
            return std::nullopt;
        return std::move(spread_);
    }

private:
    std::size_t places() const { return exercise_.path ? kSpreadPlaces : 1; }

    static TorqueSpread refused(std::string fault) {
        TorqueSpread spread;
        spread.fault = std::move(fault);
        return spread;
    }

    void begin_place() {
        mechanics::BodyCase posed = exercise_.body_case;
        if (exercise_.path)
            posed.pose = mechanics::pose_at(exercise_.body_case.pose, *exercise_.path,
                                            static_cast<double>(spread_.median.size()) /
                                                static_cast<double>(kSpreadPlaces - 1));
        here_.emplace(*input_, posed, [hinge = hinge_](const mechanics::BodyResult& one) {
            return one.muscle(hinge);
        });
    }

    mechanics::Exercise exercise_;
    mechanics::Hinge hinge_;
    tl::expected<mechanics::SpreadInput, std::string> input_;
    std::optional<mechanics::Spread> here_; ///< at the place after those that are done
    TorqueSpread spread_;
};

} // namespace

std::function<std::optional<TorqueSpread>()> spread_through_range(const setup::BodySetup& setup,
                                                                  mechanics::Hinge hinge) {
    return [work = std::make_shared<Spreading>(setup, hinge)] { return work->go_on(); };
}

void SpreadKeeper::ask(const setup::BodySetup& setup, mechanics::Hinge hinge, int version) {
    if (is_of(version))
        return;
    version_ = version;
    found_.reset();
    work_.start_pieces(spread_through_range(setup, hinge));
}

bool SpreadKeeper::is_of(int version) const {
    return version_ >= 0 && version_ == version;
}

void SpreadKeeper::drop() {
    *this = {};
}

const TorqueSpread* SpreadKeeper::found() const {
    if (auto ready = work_.take())
        found_ = std::move(ready);
    return found_ ? &*found_ : nullptr;
}

bool SpreadKeeper::busy() const {
    return version_ >= 0 && found() == nullptr;
}

} // namespace steelyard::app
