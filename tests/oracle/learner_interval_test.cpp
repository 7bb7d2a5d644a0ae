// Intervals and counts of the learner's part against published values and Boost.

#include "catch.h"
#include "learner/model/readiness.h"

#include <boost/math/distributions/binomial.hpp>

using namespace steelyard::learner;

// Newcombe 1998, Statistics in Medicine 17, 857-872, table I, method 3 (score interval of Wilson,
// no continuity correction), 95 %. Values from memory.
TEST_CASE("Wilson's interval has the published values") {
    struct Published {
        int right, of;
        double low, high;
    };
    for (const Published& row : {Published{81, 263, 0.2553, 0.3662},
                                 {15, 148, 0.0624, 0.1605},
                                 {0, 20, 0.0, 0.1611},
                                 {1, 29, 0.0061, 0.1718}}) {
        const ShareInterval interval = wilson_interval(row.right, row.of, 0.95);
        // Given to four decimals.
        CHECK_THAT(interval.low, WithinAbs(row.low, 5e-5));
        CHECK_THAT(interval.high, WithinAbs(row.high, 5e-5));
    }
}

// Inverting the score test: at either end p of Wilson's interval the observed share lies exactly z
// standard errors, taken at p, away. Boost gives the binomial's mean and standard deviation.
TEST_CASE("both ends of Wilson's interval solve the score equation") {
    for (const int of : {10, 40, 333})
        for (int right = 0; right <= of; right += of / 10) {
            const ShareInterval interval = wilson_interval(right, of, 0.9);
            for (const double p : {interval.low, interval.high}) {
                if (p <= 1e-12 || p >= 1.0 - 1e-12)
                    continue;
                const boost::math::binomial_distribution<double> binomial(of, p);
                const double errors = (right - boost::math::mean(binomial)) /
                                      boost::math::standard_deviation(binomial);
                // z of 90 %, two-sided, as in any table of the normal distribution.
                CHECK_THAT(std::abs(errors), WithinAbs(1.644854, 1e-5));
            }
        }
}
