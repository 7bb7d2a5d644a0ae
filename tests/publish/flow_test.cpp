#include "catch.h"
#include "publish/flow.h"

#include <string>
#include <vector>

using namespace steelyard::publish;

namespace {

/// Where pieces were put, as "page:top+height", for pages of 100 pt.
class Record {
public:
    PageFlow flow{100.0, [this](int page) { page_ = page; },
                  [this](const Pieces& pieces, double top) {
                      put.push_back(std::to_string(page_) + ":" +
                                    std::to_string(static_cast<int>(top)) + "+" +
                                    std::to_string(static_cast<int>(height_of(pieces))));
                  }};
    std::vector<std::string> put;

private:
    int page_ = 0;
};

Piece ink(double height) {
    return {height, [](cairo_t*) {}, Tag::none, false};
}

using Put = std::vector<std::string>;

} // namespace

TEST_CASE("blocks stand below each other until a page is full") {
    Record record;
    for (int i = 0; i < 3; ++i) {
        record.flow.add({ink(20.0), ink(20.0)});
    }
    CHECK(record.put == Put{"1:0+40", "1:40+40", "2:0+40"});
    CHECK(record.flow.pages() == 2);
}

TEST_CASE("a block that fits exactly stays on its page") {
    Record record;
    record.flow.add({ink(60.0)});
    record.flow.add({ink(40.0)});
    CHECK(record.put == Put{"1:0+60", "1:60+40"});
}

TEST_CASE("white space at the end of a block never makes a new page") {
    Record record;
    record.flow.add({ink(60.0)});
    record.flow.add({ink(40.0), gap(30.0)});
    CHECK(record.put == Put{"1:0+60", "1:60+70"});
    record.flow.add({ink(10.0)});
    CHECK(record.put.back() == "2:0+10");
}

TEST_CASE("a block longer than a page is broken between its pieces") {
    Record record;
    record.flow.add({ink(30.0)});
    record.flow.add({ink(60.0), ink(60.0), ink(60.0)});
    CHECK(record.put == Put{"1:0+30", "1:30+60", "2:0+60", "3:0+60"});
}

TEST_CASE("a piece higher than a page is put on a page of its own, not dropped and not for ever") {
    Record record;
    record.flow.add({ink(250.0), ink(10.0)});
    CHECK(record.put == Put{"1:0+250", "2:0+10"});
}

TEST_CASE("an empty block changes nothing but begins the first page") {
    Record record;
    record.flow.add({});
    CHECK(record.put.empty());
    CHECK(record.flow.pages() == 1);
}
