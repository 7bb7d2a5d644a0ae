// The archive that compresses, read by Python's own zip reader.

#include "catch.h"
#include "outside_program.h"
#include "paint/exchange/zip.h"
#include "publish/exchange/qti_package.h"
#include "publish/exchange/stored_zip.h"
#include "publish/paper_questions.h"
#include "temp_folder.h"

#include <nlohmann/json.hpp>

using namespace steelyard;
using namespace steelyard::publish;

namespace {

nlohmann::json read_back(const std::string& archive) {
    const TempFile file("package.zip", archive);
    const Ran ran = run_outside(
        "python3 " STEELYARD_SOURCE_DIR "/tests/publish/exchange/read_back.py zip " + file.path());
    INFO(ran.out);
    REQUIRE(ran.status == 0);
    return nlohmann::json::parse(ran.out);
}

} // namespace

TEST_CASE("a compressed package holds the files of the stored one in less room") {
    const problems::Bank bank = real_bank();
    const auto files = qti_files(bank, questions_of(bank, 20), QtiVersion::v2_1, "Levers");
    REQUIRE(files);
    const auto compressed = paint::zip_of(*files);
    const auto stored = stored_zip(*files);
    REQUIRE(compressed);
    REQUIRE(stored);
    CHECK(2 * compressed->size() < stored->size());
    const auto one = read_back(*compressed);
    const auto other = read_back(*stored);
    REQUIRE(one.size() == files->size());
    REQUIRE(other.size() == files->size());
    for (std::size_t i = 0; i < files->size(); ++i)
        for (const char* same : {"name", "text", "day"})
            CHECK(one[i][same] == other[i][same]);
    CHECK(*paint::zip_of(*files) == *compressed);
}
