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
    PlaceShape shape(const scene::Point& /*window_px*/) const override { return {false, false}; }
    void refit() override { screen_.pictures_px.setZero(); }

private:
    void add_way(std::vector<StartWay>& ways, std::string word, PlaceWish wish);

    StartContent content_;          ///< made on entering: what was open last stands in it
    std::vector<PlaceWish> wishes_; ///< what its ways are, by their ids
    StartScreen screen_;
};

} // namespace steelyard::app
