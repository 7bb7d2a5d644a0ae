#pragma once
// Questions of the real bank, and a sheet of them.

#include "catch.h"
#include "problems/bank/bank.h"
#include "problems/question/generator.h"
#include "publish/sheets/worksheet.h"

#include <filesystem>

inline steelyard::problems::Bank real_bank() {
    return steelyard::problems::load_bank(std::filesystem::path(STEELYARD_SOURCE_DIR) /
                                          "question_bank");
}

/// So many questions of every kind that the bank has.
inline std::vector<steelyard::problems::Question>
questions_of(const steelyard::problems::Bank& bank, std::size_t count, std::uint64_t seed = 1) {
    steelyard::problems::PaperPlan plan;
    plan.count = count;
    plan.seed = seed;
    const auto questions = steelyard::problems::make_paper(bank, plan);
    REQUIRE(questions);
    return *questions;
}

inline steelyard::publish::Worksheet
sheet_of(std::vector<steelyard::problems::Question> questions) {
    steelyard::publish::Worksheet sheet;
    sheet.title = "A winter evening";
    sheet.note = "Draw before you compute.";
    sheet.version = "B";
    sheet.code = "evening-7-B";
    sheet.parts.push_back({"All sorts", std::move(questions)});
    return sheet;
}
