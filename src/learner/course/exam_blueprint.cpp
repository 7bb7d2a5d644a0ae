#include "learner/course/exam_blueprint.h"

#include "setup/toml/toml_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace steelyard::learner {

namespace {

using setup::Need;
using setup::TomlReader;

constexpr int kMostQuestions = 500;
constexpr int kMostMinutes = 600;

SkillWeight read_weight(TomlReader& table) {
    SkillWeight weight;
    weight.skill = table.text("id", Need::required).value_or("");
    weight.weight = table.number("weight", Need::required).value_or(1.0);
    if (!std::isfinite(weight.weight) || weight.weight < 0.0)
        table.add_error("weight", fmt::format("{}", weight.weight), "0 or more");
    table.finish();
    return weight;
}

tl::expected<ExamBlueprint, setup::InputError> blueprint_of(const setup::TomlDocument& document) {
    setup::InputErrors errors;
    TomlReader top(document, errors);
    ExamBlueprint blueprint;
    blueprint.title = top.short_text("title", Need::required).value_or("");
    blueprint.questions =
        static_cast<int>(top.integer("questions", Need::required, 1, kMostQuestions).value_or(1));
    blueprint.minutes =
        static_cast<int>(top.integer("minutes", Need::required, 1, kMostMinutes).value_or(1));
    blueprint.pass_share = top.number("pass", Need::required).value_or(0.7);
    if (!(blueprint.pass_share > 0.0) || blueprint.pass_share > 1.0)
        top.add_error("pass", fmt::format("{}", blueprint.pass_share),
                      "a share above 0 and up to 1, such as \"70 %\"");
    blueprint.calculator = top.boolean("calculator").value_or(true);
    double sum = 0.0;
    for (TomlReader& skill : top.tables("skill", Need::required)) {
        SkillWeight read = read_weight(skill);
        const bool twice =
            std::any_of(blueprint.weights.begin(), blueprint.weights.end(),
                        [&](const SkillWeight& other) { return other.skill == read.skill; });
        if (twice)
            skill.add_error("id", fmt::format("\"{}\" a second time", read.skill),
                            "each skill once", "Add up the weights.");
        sum += read.weight;
        blueprint.weights.push_back(std::move(read));
    }
    if (errors.empty() && !(sum > 0.0))
        top.add_error("skill", "weights that add up to 0", "at least one weight above 0");
    top.finish();
    if (!errors.empty())
        return tl::make_unexpected(setup::first_of(errors));
    return blueprint;
}

} // namespace

tl::expected<ExamBlueprint, setup::InputError> parse_exam_blueprint(std::string_view text,
                                                                    const std::string& file) {
    return setup::parse_toml(text, file).and_then(blueprint_of);
}

tl::expected<ExamBlueprint, setup::InputError>
read_exam_blueprint(const std::filesystem::path& path) {
    return setup::read_toml_file(path).and_then(blueprint_of);
}

std::vector<int> share_out(const std::vector<double>& weights, int questions) {
    const double sum = std::accumulate(weights.begin(), weights.end(), 0.0);
    std::vector<int> shares(weights.size(), 0);
    if (!(sum > 0.0))
        return shares;
    std::vector<double> remainders(weights.size());
    int given = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        const double quota = weights[i] / sum * questions;
        // A quota that is a whole number in decimals may miss it by an ulp.
        shares[i] = static_cast<int>(std::floor(quota + 1e-9));
        remainders[i] = quota - shares[i];
        given += shares[i];
    }
    std::vector<std::size_t> order(weights.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return remainders[a] > remainders[b] + 1e-9;
    });
    for (std::size_t i = 0; given < questions; ++i, ++given)
        ++shares[order[i % order.size()]];
    return shares;
}

int pass_mark(double pass_share, int questions) {
    return static_cast<int>(std::ceil(pass_share * questions - 1e-9));
}

} // namespace steelyard::learner
