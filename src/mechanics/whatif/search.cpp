#include "mechanics/whatif/search.h"

#include <boost/math/tools/minima.hpp>
#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

namespace steelyard::mechanics {
namespace {

/// Places looked at on either side of the present one.
constexpr int kPlacesPerSide = 64;
constexpr std::uintmax_t kMostIterations = 200;

struct Sample {
    double at = 0.0;
    AllowedReading reading;
};

/// Places from low to high, spaced as the square of their number away from the present one.
std::vector<Sample> look_around(const ReadingAt& reading_at, const Interval& range,
                                double present) {
    std::vector<Sample> samples;
    const auto look = [&](double at) {
        if (samples.empty() || at > samples.back().at)
            samples.push_back({at, reading_at(at)});
    };
    const auto step = [](int i) {
        const double u = static_cast<double>(i) / kPlacesPerSide;
        return u * u;
    };
    for (int i = kPlacesPerSide; i > 0; --i)
        look(present + (range.low - present) * step(i));
    look(present);
    for (int i = 1; i <= kPlacesPerSide; ++i)
        look(present + (range.high - present) * step(i));
    // The product may miss the ends by rounding; they are meant exactly.
    samples.front().at = range.low;
    samples.back().at = range.high;
    return samples;
}

/// The last allowed place on the way from an allowed sample to one that is not.
Sample walk_to_edge(const ReadingAt& reading_at, Sample allowed, Sample not_allowed) {
    while (std::abs(allowed.at - not_allowed.at) >
           kEdgeAccuracy * std::max(1.0, std::abs(allowed.at))) {
        const double middle = 0.5 * (allowed.at + not_allowed.at);
        Sample sample{middle, reading_at(middle)};
        (sample.reading ? allowed : not_allowed) = std::move(sample);
    }
    return allowed;
}

/// Samples with the edges of what is allowed put in between.
std::vector<Sample> with_edges(const ReadingAt& reading_at, const std::vector<Sample>& samples) {
    std::vector<Sample> all;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        const bool enters = i > 0 && samples[i].reading && !samples[i - 1].reading;
        const bool leaves = i > 0 && !samples[i].reading && samples[i - 1].reading;
        if (enters || leaves) {
            Sample edge = enters ? walk_to_edge(reading_at, samples[i], samples[i - 1])
                                 : walk_to_edge(reading_at, samples[i - 1], samples[i]);
            if (edge.at > all.back().at && edge.at < samples[i].at)
                all.push_back(std::move(edge));
        }
        all.push_back(samples[i]);
    }
    return all;
}

/// One search, its samples and what it has found so far.
class Finder {
public:
    Finder(const ReadingAt& reading_at, std::vector<Sample> samples, double wanted)
        : reading_at_(reading_at), samples_(std::move(samples)), wanted_(wanted) {}

    void find() {
        for (std::size_t i = 0; i < samples_.size(); ++i) {
            if (!samples_[i].reading)
                continue;
            consider(samples_[i].at, *samples_[i].reading, limit_at(i));
            if (i + 1 < samples_.size() && samples_[i + 1].reading)
                solve_between(samples_[i], samples_[i + 1]);
            if (i > 0 && i + 1 < samples_.size() && samples_[i - 1].reading &&
                samples_[i + 1].reading)
                look_for_turning_point(i);
        }
    }

    SearchResult result(double present) const {
        SearchResult found;
        found.solutions = solutions_;
        std::sort(found.solutions.begin(), found.solutions.end(),
                  [present](double one, double other) {
                      return std::abs(one - present) < std::abs(other - present);
                  });
        if (solutions_.empty())
            found.nearest = nearest_;
        if (!nearest_)
            for (const Sample& sample : samples_)
                if (sample.at == present)
                    found.first_limit = sample.reading.error();
        return found;
    }

private:
    double miss(double reading) const { return reading - wanted_; }
    double accuracy() const { return kSearchAccuracy * std::max(1.0, std::abs(wanted_)); }
    bool hits(double reading) const { return std::abs(miss(reading)) <= accuracy(); }

    /// What stops at a sample: a neighbour that is not allowed, or the end of the range.
    Limit limit_at(std::size_t i) const {
        if (i > 0 && !samples_[i - 1].reading)
            return samples_[i - 1].reading.error();
        if (i + 1 < samples_.size() && !samples_[i + 1].reading)
            return samples_[i + 1].reading.error();
        return {i == 0 || i + 1 == samples_.size() ? LimitKind::range_end
                                                   : LimitKind::turning_point,
                std::nullopt,
                {}};
    }

    void consider(double at, double reading, const Limit& limit) {
        if (hits(reading))
            add_solution(at);
        if (!nearest_ || std::abs(miss(reading)) < std::abs(miss(nearest_->reading)))
            nearest_ = NearestReading{at, reading, limit};
    }

    void add_solution(double at) {
        // Two neighbouring steps can end at one solution.
        const auto same = [at](double other) {
            return std::abs(at - other) <= 1e-9 * std::max(1.0, std::abs(at));
        };
        if (std::none_of(solutions_.begin(), solutions_.end(), same))
            solutions_.push_back(at);
    }

    void solve_between(const Sample& one, const Sample& other) {
        if (miss(*one.reading) * miss(*other.reading) >= 0.0)
            return;
        bool allowed = true;
        const auto miss_at = [&](double at) {
            const AllowedReading reading = reading_at_(at);
            allowed = allowed && reading;
            return reading ? miss(*reading) : miss(*one.reading);
        };
        std::uintmax_t iterations = kMostIterations;
        const auto [low, high] = boost::math::tools::toms748_solve(
            miss_at, one.at, other.at, miss(*one.reading), miss(*other.reading),
            boost::math::tools::eps_tolerance<double>(), iterations);
        if (!allowed)
            return;
        const double miss_low = std::abs(miss_at(low));
        const double miss_high = std::abs(miss_at(high));
        const double at = miss_low <= miss_high ? low : high;
        // A jump across the value is not a solution.
        if (std::min(miss_low, miss_high) <= accuracy())
            add_solution(at);
    }

    void look_for_turning_point(std::size_t i) {
        const double here = miss(*samples_[i].reading);
        const double before = miss(*samples_[i - 1].reading);
        const double after = miss(*samples_[i + 1].reading);
        const bool one_side = here * before > 0.0 && here * after > 0.0;
        if (!one_side || std::abs(here) > std::abs(before) || std::abs(here) > std::abs(after))
            return;
        // Where nothing changes beyond the accuracy, the turning points are those of rounding.
        if (std::abs(before - here) <= accuracy() && std::abs(after - here) <= accuracy())
            return;
        const double sign = here < 0.0 ? -1.0 : 1.0;
        const auto signed_miss = [&](double at) {
            const AllowedReading reading = reading_at_(at);
            return reading ? sign * miss(*reading) : std::numeric_limits<double>::max();
        };
        const double at = boost::math::tools::brent_find_minima(
                              signed_miss, samples_[i - 1].at, samples_[i + 1].at,
                              std::numeric_limits<double>::digits / 2)
                              .first;
        const Sample turn{at, reading_at_(at)};
        if (!turn.reading)
            return;
        consider(at, *turn.reading, {LimitKind::turning_point, std::nullopt, {}});
        solve_between(samples_[i - 1], turn);
        solve_between(turn, samples_[i + 1]);
    }

    const ReadingAt& reading_at_;
    std::vector<Sample> samples_;
    double wanted_;
    std::vector<double> solutions_;
    std::optional<NearestReading> nearest_;
};

} // namespace

ReadingAt paced(ReadingAt reading_at, Pace* pace) {
    if (pace == nullptr)
        return reading_at;
    return [reading_at = std::move(reading_at), pace](double at) -> AllowedReading {
        if (const auto found = pace->known.find(at); found != pace->known.end())
            return found->second;
        if (pace->readings_left <= 0) {
            pace->paused = true;
            return tl::unexpected(Limit{LimitKind::cannot_be, std::nullopt, {}});
        }
        --pace->readings_left;
        return pace->known.emplace(at, reading_at(at)).first->second;
    };
}

SearchResult search(const ReadingAt& reading_at, const Interval& range, double present,
                    double wanted) {
    Finder finder(reading_at, with_edges(reading_at, look_around(reading_at, range, present)),
                  wanted);
    finder.find();
    return finder.result(present);
}

std::vector<AllowedSpan> allowed_spans(const ReadingAt& reading_at, const Interval& range,
                                       double present) {
    const std::vector<Sample> samples =
        with_edges(reading_at, look_around(reading_at, range, present));
    const Limit end{LimitKind::range_end, std::nullopt, {}};
    std::vector<AllowedSpan> spans;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        if (!samples[i].reading)
            continue;
        const bool opens = i == 0 || !samples[i - 1].reading;
        if (opens)
            spans.push_back({{samples[i].at, samples[i].at},
                             i == 0 ? end : samples[i - 1].reading.error(),
                             end});
        spans.back().span.high = samples[i].at;
        if (i + 1 < samples.size() && !samples[i + 1].reading)
            spans.back().above = samples[i + 1].reading.error();
    }
    return spans;
}

} // namespace steelyard::mechanics
