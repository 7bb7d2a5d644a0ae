#include "problems/draw/instance.h"

namespace steelyard::problems {

const char* describe(Refusal refusal) {
    switch (refusal) {
    case Refusal::none:
        return "accepted";
    case Refusal::constraint:
        return "against a constraint of the family";
    case Refusal::not_solvable:
        return "a setup that the solver refuses";
    case Refusal::no_class:
        return "no clear class";
    case Refusal::wrong_status:
        return "an effort that cannot balance or would have to pull the other way";
    case Refusal::disagrees:
        return "a stated number that is not the solver's";
    case Refusal::no_value:
        return "a quantity without a value";
    case Refusal::not_clean:
        return "a stated number that is no short decimal";
    case Refusal::answer_is_given:
        return "an answer that stands in the prompt";
    case Refusal::answer_collides:
        return "an answer within tolerance of a wrong rule's";
    case Refusal::rules_collide:
        return "two wrong rules with the same number";
    case Refusal::choices_unclear:
        return "choices without one clear answer";
    }
    return "";
}

} // namespace steelyard::problems
