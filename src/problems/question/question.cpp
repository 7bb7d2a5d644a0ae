#include "problems/question/question.h"

#include <numeric>

namespace steelyard::problems {

const NumberWanted* wanted_number(const Question& question) {
    return std::get_if<NumberWanted>(&question.wanted);
}

const PlaceWanted* wanted_place(const Question& question) {
    return std::get_if<PlaceWanted>(&question.wanted);
}

const std::vector<Choice>& choices_of(const Question& question) {
    static const std::vector<Choice> kNone;
    using Choices = const std::vector<Choice>&;
    return std::visit(Cases{
                          [](const NumberWanted&) -> Choices { return kNone; },
                          [](const ChoiceWanted& one) -> Choices { return one.choices; },
                          [](const SeveralWanted& several) -> Choices { return several.choices; },
                          [](const OrderWanted& order) -> Choices { return order.choices; },
                          [](const PlaceWanted&) -> Choices { return kNone; },
                          [](const ChangeWanted& change) -> Choices { return change.choices; },
                      },
                      question.wanted);
}

const std::vector<Spot>& spots_of(const Question& question) {
    static const std::vector<Spot> kNone;
    const PlaceWanted* place = wanted_place(question);
    return place != nullptr ? place->spots : kNone;
}

std::vector<std::size_t> right_ones(const Question& question) {
    using Indices = std::vector<std::size_t>;
    return std::visit(Cases{
                          [](const NumberWanted&) { return Indices{}; },
                          [](const ChoiceWanted& one) { return Indices{one.correct}; },
                          [](const SeveralWanted& several) { return several.correct; },
                          [](const OrderWanted& order) { return order.order; },
                          [](const PlaceWanted& place) { return Indices{place.correct}; },
                          [](const ChangeWanted& change) { return Indices{change.correct}; },
                      },
                      question.wanted);
}

} // namespace steelyard::problems
