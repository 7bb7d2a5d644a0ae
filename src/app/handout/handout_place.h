#pragma once
// Handouts as a place: worksheets with keys, and questions for other programs.

#include "app/handout/handout_screen.h"
#include "app/place/abilities.h"
#include "app/place/place.h"

namespace steelyard::app {

class HandoutPlace final : public Place, public Opening {
public:
    explicit HandoutPlace(Surroundings& around);

    PlaceFrame run(const PlaceInput& input) override;
    void enter(Surroundings& around) override;
    void open(const OpenedFile& file, Surroundings& around) override;
    bool moving() const override { return screen_.working(); }

private:
    /// A change of the person's units is one of the sheet's.
    void follow_units(setup::UnitSystem units);

    HandoutScreen screen_;
    setup::UnitSystem followed_ = setup::UnitSystem::si;
};

} // namespace steelyard::app
