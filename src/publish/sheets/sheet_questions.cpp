#include "publish/sheets/sheet_questions.h"

#include "problems/question/generator.h"

#include <cassert>

namespace steelyard::publish {

problems::Question SheetQuestions::operator[](std::size_t index) const {
    assert(index < size());
    if (bank_ == nullptr)
        return kept_[index];
    auto question = problems::question_from_code(*bank_, codes_[index]);
    assert(question && "the codes are of this bank");
    return question ? std::move(*question) : problems::Question{};
}

} // namespace steelyard::publish
