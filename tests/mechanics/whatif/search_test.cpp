#include "catch.h"
#include "mechanics/whatif/search.h"

#include <cmath>

using namespace steelyard::mechanics;

namespace {

const Interval kRange{-3.0, 3.0};

Limit topples() {
    return {LimitKind::would_topple, std::nullopt, {}};
}

} // namespace

TEST_CASE("a search gives every solution, the nearest to the present first", "[whatif][search]") {
    // x² = 2 at ±√2; the present 1 lies nearer to +√2.
    const SearchResult found =
        search([](double x) -> AllowedReading { return x * x; }, kRange, 1.0, 2.0);
    REQUIRE(found.solutions.size() == 2);
    CHECK_THAT(found.solutions[0], WithinAbs(std::sqrt(2.0), 1e-14)); // a double's neighbours
    CHECK_THAT(found.solutions[1], WithinAbs(-std::sqrt(2.0), 1e-14));
    CHECK_FALSE(found.nearest);
}

TEST_CASE("two solutions between two places that were looked at are found from the turn between",
          "[whatif][search]") {
    // A narrow dip to -1e-6 around 2.0113, far thinner than the steps there.
    const auto dip = [](double x) -> AllowedReading {
        return 1.0 + (x - 2.0113) * (x - 2.0113) - 1e-6;
    };
    const SearchResult found = search(dip, kRange, 0.0, 1.0);
    REQUIRE(found.solutions.size() == 2);
    CHECK_THAT(found.solutions[0], WithinAbs(2.0113 - 1e-3, 1e-9)); // 1e-16 / slope of 2e-3
    CHECK_THAT(found.solutions[1], WithinAbs(2.0113 + 1e-3, 1e-9));
}

TEST_CASE("a value that is only touched is a solution", "[whatif][search]") {
    const SearchResult found = search(
        [](double x) -> AllowedReading { return 5.0 + (x - 0.3) * (x - 0.3); }, kRange, -1.0, 5.0);
    REQUIRE_FALSE(found.solutions.empty());
    CHECK_THAT(found.solutions[0], WithinAbs(0.3, 1e-4)); // 1e-9 of the reading is 7e-5 of x
}

TEST_CASE("a jump across the wanted value is not a solution", "[whatif][search]") {
    const SearchResult found =
        search([](double x) -> AllowedReading { return x < 0.7 ? 1.0 : 3.0; }, kRange, 0.0, 2.0);
    CHECK(found.solutions.empty());
    REQUIRE(found.nearest);
}

TEST_CASE("without a solution the search says how near it gets and what stops it",
          "[whatif][search]") {
    const auto line = [](double x) -> AllowedReading { return x; };
    SearchResult found = search(line, kRange, 0.0, 10.0);
    REQUIRE(found.nearest);
    CHECK(found.nearest->at == 3.0);
    CHECK(found.nearest->limit.kind == LimitKind::range_end);

    const auto hill = [](double x) -> AllowedReading { return 4.0 - (x - 0.5) * (x - 0.5); };
    found = search(hill, kRange, 0.0, 10.0);
    REQUIRE(found.nearest);
    CHECK_THAT(found.nearest->at, WithinAbs(0.5, 1e-7)); // half of a double's digits
    CHECK(found.nearest->limit.kind == LimitKind::turning_point);

    const auto to_an_edge = [](double x) -> AllowedReading {
        if (x > 1.234567)
            return tl::unexpected(topples());
        return x;
    };
    found = search(to_an_edge, kRange, 0.0, 10.0);
    REQUIRE(found.nearest);
    CHECK_THAT(found.nearest->at,
               WithinAbs(1.234567, 2.0 * kEdgeAccuracy)); // bisected to the last bits
    CHECK(found.nearest->at <= 1.234567);
    CHECK(found.nearest->limit.kind == LimitKind::would_topple);
}

TEST_CASE("a solution just short of the edge of what is allowed is found", "[whatif][search]") {
    const auto to_an_edge = [](double x) -> AllowedReading {
        if (x > 1.234567)
            return tl::unexpected(topples());
        return x;
    };
    const SearchResult found = search(to_an_edge, kRange, 0.0, 1.2345);
    REQUIRE(found.solutions.size() == 1);
    CHECK_THAT(found.solutions[0], WithinAbs(1.2345, 1e-12));
}

TEST_CASE("when nothing is allowed the search says what is wrong with the present",
          "[whatif][search]") {
    const SearchResult found = search(
        [](double) -> AllowedReading { return tl::unexpected(topples()); }, kRange, 0.0, 1.0);
    CHECK(found.solutions.empty());
    CHECK_FALSE(found.nearest);
    REQUIRE(found.first_limit);
    CHECK(found.first_limit->kind == LimitKind::would_topple);
}

TEST_CASE("a present at the end of its range is searched on its one side", "[whatif][search]") {
    const SearchResult found =
        search([](double x) -> AllowedReading { return x; }, {0.0, 3.0}, 0.0, 2.5);
    REQUIRE(found.solutions.size() == 1);
    CHECK_THAT(found.solutions[0], WithinAbs(2.5, 1e-14));
}

TEST_CASE("the allowed parts of a range come with what stops them", "[whatif][search]") {
    const auto two_parts = [](double x) -> AllowedReading {
        if (std::abs(x) < 0.5)
            return tl::unexpected(topples());
        return x;
    };
    const std::vector<AllowedSpan> spans = allowed_spans(two_parts, kRange, 1.0);
    REQUIRE(spans.size() == 2);
    CHECK(spans[0].span.low == -3.0);
    CHECK_THAT(spans[0].span.high, WithinAbs(-0.5, kEdgeAccuracy));
    CHECK(spans[0].below.kind == LimitKind::range_end);
    CHECK(spans[0].above.kind == LimitKind::would_topple);
    CHECK_THAT(spans[1].span.low, WithinAbs(0.5, kEdgeAccuracy));
    CHECK(spans[1].span.high == 3.0);
}
