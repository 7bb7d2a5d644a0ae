#include "words/computed_step.h"

#include <cmath>
#include <utility>

namespace steelyard::words {

std::string formula_text(double value_SI, setup::Dimension dimension, setup::UnitSystem units) {
    return setup::format_in_unit(value_SI, dimension, setup::formula_unit(dimension, units),
                                 kInFormulas)
        .joined();
}

ComputedStep computed_step(std::string title, std::string symbols, std::string numbers,
                           double value_SI, setup::Dimension dimension, setup::UnitSystem units) {
    std::string result_text = formula_text(value_SI, dimension, units);
    if (numbers == result_text) // a sum of one: nothing to work out
        numbers.clear();
    return {std::move(title),       std::move(symbols), std::move(numbers),
            std::move(result_text), value_SI,           dimension};
}

ComputedStep in_words(std::string title, std::string result) {
    return {std::move(title), "", "", std::move(result), 0.0, setup::Dimension::number};
}

std::string sum_of(const std::vector<double>& terms_SI, setup::Dimension dimension,
                   setup::UnitSystem units) {
    std::string text;
    for (std::size_t i = 0; i < terms_SI.size(); ++i) {
        const std::string size = formula_text(std::abs(terms_SI[i]), dimension, units);
        if (i == 0)
            text = terms_SI[i] < 0.0 ? "−" + size : size;
        else
            text += (terms_SI[i] < 0.0 ? " − " : " + ") + size;
    }
    return text;
}

} // namespace steelyard::words
