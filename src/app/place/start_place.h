#pragma once
// The start as a place: where its doors lead.

#include "app/place/place.h"
#include "app/start/start_screen.h"

namespace steelyard::app {

class StartPlace final : public Place {
public:
    explicit StartPlace(Surroundings& /*around*/) {}

    PlaceFrame run(const PlaceInput& input) override;
    /// Looks up what was open last.
    void enter(Surroundings& around) override;
    bool has_column() const override { return false; }
    void refit() override { screen_.pictures_px.setZero(); }

private:
    struct Way {
        std::string word;
        Errand errand;
    };
    StartContent content(Library& library) const;
    std::vector<StartWay> ways(std::size_t first, std::size_t count) const;

    std::vector<Way> ways_;
    StartScreen screen_;
};

} // namespace steelyard::app
