#include "catch.h"
#include "lesson/glossary.h"
#include "lesson/lesson_quantity.h"

#include <fstream>
#include <set>

using namespace steelyard::lesson;
namespace setup = steelyard::setup;

namespace {

const std::string kFile = std::string(STEELYARD_SOURCE_DIR) + "/assets/pages/glossary.toml";

const std::vector<Term>& glossary() {
    static const std::vector<Term> terms = [] {
        auto read = read_glossary(kFile);
        INFO((read ? std::string() : setup::to_text(read.error())));
        REQUIRE(read);
        return *read;
    }();
    return terms;
}

/// Names of what a search finds.
std::vector<std::string> found(std::string_view text) {
    std::vector<std::string> names;
    for (const std::size_t i : terms_with(glossary(), text))
        names.push_back(glossary()[i].name);
    return names;
}

setup::InputError broken(const std::string& text) {
    const std::string path = "broken-glossary.toml";
    std::ofstream(path) << text;
    const auto read = read_glossary(path);
    std::filesystem::remove(path);
    REQUIRE_FALSE(read);
    return read.error();
}

} // namespace

TEST_CASE("every term of the glossary says something, has a source and a drawing that solves",
          "[glossary]") {
    CHECK(glossary().size() >= 45);
    std::set<std::string> names;
    for (const Term& term : glossary()) {
        INFO(term.name);
        CHECK(names.insert(term.name).second);
        CHECK(term.says.back() == '.');
        CHECK_FALSE(term.source.empty());
        const auto stage = stage_of(term);
        REQUIRE(stage);
        if (*stage)
            CHECK(solve_stage(**stage));
    }
}

TEST_CASE("a term is found by what exams and books call it, whatever the capitals", "[glossary]") {
    CHECK(found("fulcrum").front() == "axis");
    CHECK(found("Resistance arm").front() == "load arm");
    CHECK(found("coronal").front() == "frontal plane");
    CHECK(found("moment of force").front() == "torque");
    CHECK(found("LEVER ARM").front() == "moment arm");
    CHECK(found("zzz").empty());
    CHECK(found("").size() == glossary().size());
}

TEST_CASE("a term that begins so comes before one that only holds it", "[glossary]") {
    const auto names = found("torque");
    CHECK(names.front() == "torque");
    CHECK(names.size() > 1);
}

TEST_CASE("a drawing shows a term's marks and leaves the others out", "[glossary]") {
    for (const Term& term : glossary()) {
        const StageMarks out = left_out(term);
        for (const StageMark mark : term.marks)
            CHECK(out.count(mark) == 0);
        CHECK(out.count(StageMark::axis) == 0);
        CHECK(out.empty() == term.marks.empty());
    }
}

TEST_CASE("a term without a meaning or with an unknown setup is named", "[glossary]") {
    CHECK(broken("[[term]]\nname = \"axis\"\nsource = \"x\"\n").key.find("says") !=
          std::string::npos);
    CHECK(broken("[[term]]\nname = \"axis\"\nsays = \"A line.\"\nsource = \"x\"\n"
                 "setup = \"wheelbarow\"\n")
              .mend.find("wheelbarrow") != std::string::npos);
}
