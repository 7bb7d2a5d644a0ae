#include "catch.h"
#include "cli/reports/body_ascii.h"
#include "cli/reports/lever_ascii.h"
#include "cli/study/terminal.h"
#include "publish/paper_questions.h"

#include <algorithm>
#include <sstream>

using namespace steelyard;

namespace {

/// The widest line of a drawing, its legend left out.
std::size_t widest(const std::string& drawing) {
    std::istringstream in(drawing.substr(0, drawing.find("\n  ^ axis")));
    std::size_t most = 0;
    for (std::string line; std::getline(in, line);)
        most = std::max(most, line.size());
    return most;
}

} // namespace

TEST_CASE("a drawing in a terminal is as wide as its columns and never wider") {
    const problems::Bank bank = real_bank();
    std::size_t drawn = 0;
    std::size_t wide = 0;
    for (const problems::Question& question : questions_of(bank, 60)) {
        const auto* lever = std::get_if<problems::LeverPicture>(&question.picture);
        if (lever == nullptr || !lever->show_axis)
            continue;
        INFO(question.code);
        ++drawn;
        std::size_t before = 0;
        for (const int columns : {40, 72, 100, 132}) {
            const std::size_t width =
                widest(cli::draw_in_ascii(*lever, problems::spots_of(question), columns));
            CHECK(width <= static_cast<std::size_t>(columns));
            CHECK(width >= before);
            before = width;
        }
        wide += before > 100 ? 1 : 0; // an upright lever is narrow in any room
    }
    CHECK(drawn > 10);
    CHECK(wide > 5);
}

TEST_CASE("what is no terminal gets a drawing of usual width") {
    std::ostringstream out;
    CHECK(cli::terminal_columns(out) == static_cast<int>(cli::kColumns));
}
