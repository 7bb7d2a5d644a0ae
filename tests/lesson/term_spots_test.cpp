#include "catch.h"
#include "lesson/term_spots.h"

using namespace steelyard::lesson;

namespace {

Term named(std::string name, std::vector<std::string> also = {}) {
    Term term;
    term.name = std::move(name);
    term.also = std::move(also);
    return term;
}

/// Spots in brackets, with the index of their term.
std::string marked(const std::vector<Term>& terms, const std::string& text) {
    std::string shown;
    std::size_t at = 0;
    for (const TermSpot& spot : TermFinder(terms).spots(text)) {
        shown += text.substr(at, spot.begin - at) + "[" +
                 text.substr(spot.begin, spot.end - spot.begin) + ":" + std::to_string(spot.term) +
                 "]";
        at = spot.end;
    }
    return shown + text.substr(at);
}

} // namespace

TEST_CASE("terms are found as whole words, the longest first, once each") {
    const std::vector<Term> terms{named("load"), named("load arm", {"resistance arm"}),
                                  named("axis", {"fulcrum", "pivot"})};
    CHECK(marked(terms, "The load arm of the load is a load arm.") ==
          "The [load arm:1] of the [load:0] is a load arm.");
    CHECK(marked(terms, "Unloaded loader") == "Unloaded loader");
    CHECK(marked(terms, "Load it.") == "[Load:0] it.");
}

TEST_CASE("plurals are found, and other names that mean nothing else") {
    const std::vector<Term> terms{named("load"), named("load arm", {"resistance arm"}),
                                  named("axis", {"fulcrum", "pivot"})};
    CHECK(marked(terms, "Three axes and two loads") == "Three [axes:2] and two [loads:0]");
    CHECK(marked(terms, "The fulcrum, a pivot") == "The [fulcrum:2], a pivot");
    CHECK(marked(terms, "its resistance arm") == "its [resistance arm:1]");
}

TEST_CASE("nothing is found in an empty text, nor within a word beyond ASCII") {
    const std::vector<Term> terms{named("load")};
    CHECK(TermFinder(terms).spots("").empty());
    CHECK(marked(terms, "éload load") == "éload [load:0]");
}
