#include "catch.h"
#include "paint/paper/flow.h"

#include <string>
#include <vector>

using namespace steelyard::paint;

namespace {

/// Where pieces were put, as "page:top+height", for pages of 100 pt.
class Record {
public:
    PageFlow flow{100.0, [this](int page) { page_ = page; },
                  [this](const Pieces& pieces, double top) {
                      put_.push_back(std::to_string(page_) + ":" +
                                     std::to_string(static_cast<int>(top)) + "+" +
                                     std::to_string(static_cast<int>(height_of(pieces))));
                  }};
    /// What was put when the last page has ended.
    const std::vector<std::string>& put() {
        flow.finish();
        return put_;
    }

private:
    std::vector<std::string> put_;
    int page_ = 0;
};

Piece ink(double height) {
    return {height, [](cairo_t*) {}, Tag::none, false};
}

Piece growing(double height) {
    Piece piece = ink(height);
    piece.grown = growing;
    return piece;
}

using Put = std::vector<std::string>;

} // namespace

TEST_CASE("blocks stand below each other until a page is full") {
    Record record;
    for (int i = 0; i < 3; ++i)
        record.flow.add({ink(20.0), ink(20.0)});
    CHECK(record.put() == Put{"1:0+40", "1:40+40", "2:0+40"});
    CHECK(record.flow.pages() == 2);
}

TEST_CASE("a block that fits exactly stays on its page") {
    Record record;
    record.flow.add({ink(60.0)});
    record.flow.add({ink(40.0)});
    CHECK(record.put() == Put{"1:0+60", "1:60+40"});
}

TEST_CASE("white space at the end of a block never makes a new page") {
    Record record;
    record.flow.add({ink(60.0)});
    record.flow.add({ink(40.0), gap(30.0)});
    record.flow.add({ink(10.0)});
    CHECK(record.put() == Put{"1:0+60", "1:60+70", "2:0+10"});
}

TEST_CASE("a block longer than a page is broken between its pieces") {
    Record record;
    record.flow.add({ink(30.0)});
    record.flow.add({ink(60.0), ink(60.0), ink(60.0)});
    CHECK(record.put() == Put{"1:0+30", "1:30+60", "2:0+60", "3:0+60"});
}

TEST_CASE("a piece higher than a page is put on a page of its own, not dropped and not for ever") {
    Record record;
    record.flow.add({ink(250.0), ink(10.0)});
    CHECK(record.put() == Put{"1:0+250", "2:0+10"});
}

TEST_CASE("an empty block changes nothing but begins the first page") {
    Record record;
    record.flow.add({});
    CHECK(record.put().empty());
    CHECK(record.flow.pages() == 1);
}

TEST_CASE("what is left of a page goes to what can grow, evenly and within reason") {
    Record record;
    record.flow.add({ink(20.0), growing(10.0)});
    record.flow.add({growing(10.0), ink(20.0)});
    // 40 pt are left: 15 for each, one and a half times its height.
    CHECK(record.put() == Put{"1:0+45", "1:45+45"});
    Record full;
    full.flow.add({ink(50.0), growing(40.0)});
    full.flow.add({ink(30.0)});
    CHECK(full.put() == Put{"1:0+100", "2:0+30"});
}
