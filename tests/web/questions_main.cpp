// What `steelyard generate --json` prints, from the code of the page: questions SEED COUNT, run by
// node. A seed has to give the same paper in a browser as on the desktop.

#include "cli/reports/question_json.h"
#include "problems/bank/bank.h"
#include "problems/question/paper.h"
#include "problems/question/question_writer.h"
#include "setup/files/data_folder.h"

#include <cstdlib>
#include <iostream>

int main(int argc, char** argv) {
    using namespace steelyard;
    if (argc != 3)
        return 2;
    const problems::Bank bank = problems::load_bank(setup::data_folder() / "question_bank");
    problems::PaperPlan plan;
    plan.seed = std::strtoull(argv[1], nullptr, 10);
    plan.count = std::strtoull(argv[2], nullptr, 10);
    cli::JsonRows rows(std::cout, "generate", "questions", cli::RowStyle::document);
    const auto drawn = problems::draw_paper(bank, plan, [&](const problems::Instance& instance) {
        rows.add(cli::question_json(write_question(bank, instance)));
        return true;
    });
    rows.finish();
    return bank.faults.empty() && drawn ? 0 : 1;
}
