#pragma once
// A worksheet as plain data: what stands on the paper for the learner and on the key.

#include "publish/sheets/page_format.h"
#include "publish/sheets/sheet_questions.h"

#include <cstdint>
#include <string>
#include <vector>

namespace steelyard::publish {

/// Questions under one heading.
struct SheetPart {
    std::string heading; ///< may be empty
    SheetQuestions questions;
};

/// One version of a paper.
struct Worksheet {
    std::string title;
    std::string note;    ///< a line or two below the title; may be empty
    std::string version; ///< "A"; empty when there is only one
    std::string code;    ///< makes this sheet again: "boathouse-42-B"
    PaperSize paper = PaperSize::a4;
    bool large_print = false;
    bool prints_codes = false; ///< each question's code stands below it
    std::vector<SheetPart> parts;

    /// What the sheet says about its codes; empty without them.
    std::string how_to_mark() const {
        return prints_codes ? "Mark yourself: in Steelyard choose Study, then A question by its "
                              "code; or type: steelyard ask CODE."
                            : "";
    }

    std::size_t count() const {
        std::size_t questions = 0;
        for (const SheetPart& part : parts)
            questions += part.questions.size();
        return questions;
    }
};

} // namespace steelyard::publish
