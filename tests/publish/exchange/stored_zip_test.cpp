// The archive that only stores, read by Python's own zip reader.

#include "catch.h"
#include "outside_program.h"
#include "publish/exchange/stored_zip.h"
#include "temp_folder.h"

#include <nlohmann/json.hpp>

using namespace steelyard::publish;

namespace {

nlohmann::json read_back(const std::string& archive) {
    const TempFile file("stored.zip", archive);
    const Ran ran = run_outside(
        "python3 " STEELYARD_SOURCE_DIR "/tests/publish/exchange/read_back.py zip " + file.path());
    INFO(ran.out);
    REQUIRE(ran.status == 0);
    return nlohmann::json::parse(ran.out);
}

} // namespace

TEST_CASE("a stored archive holds every file whole, by an outside reader") {
    std::string every_byte;
    for (int i = 0; i < 256; ++i)
        every_byte += static_cast<char>(i);
    std::string latin; // what Python's latin-1 makes of it, as UTF-8
    for (int i = 0; i < 256; ++i) {
        if (i < 0x80) {
            latin += static_cast<char>(i);
        } else {
            latin += static_cast<char>(0xC0 | i >> 6);
            latin += static_cast<char>(0x80 | (i & 0x3F));
        }
    }
    const std::vector<PackedFile> files{{"imsmanifest.xml", "<manifest/>"},
                                        {"items/deep/\xC3\xA4rm.bin", every_byte},
                                        {"empty", ""},
                                        {"long", std::string(70000, 'x')}};
    const auto archive = stored_zip(files);
    REQUIRE(archive);
    const auto read = read_back(*archive);
    REQUIRE(read.size() == files.size());
    for (std::size_t i = 0; i < files.size(); ++i) {
        CHECK(read[i]["name"] == files[i].path);
        CHECK(read[i]["stored"] == true);
        CHECK(read[i]["day"] == nlohmann::json({2000, 1, 1}));
    }
    CHECK(read[0]["text"] == files[0].bytes);
    CHECK(read[1]["text"] == latin);
    CHECK(read[2]["text"] == "");
    CHECK(read[3]["text"] == files[3].bytes);
    CHECK(*stored_zip(files) == *archive);
}

TEST_CASE("an archive without files is one") {
    const auto archive = stored_zip({});
    REQUIRE(archive);
    CHECK(archive->size() == 22); // APPNOTE.TXT 4.3.16: the end record alone
    CHECK(read_back(*archive).empty());
}

TEST_CASE("more files than the format's first edition counts are refused") {
    const auto archive = stored_zip(std::vector<PackedFile>(65536, PackedFile{"a", ""}));
    REQUIRE_FALSE(archive);
    CHECK(archive.error().fault == PublishFault::bad_size);
    CHECK(stored_zip(std::vector<PackedFile>(65535, PackedFile{"a", ""})));
}

TEST_CASE("the checksum is CRC-32") {
    // The check value that lists of such checksums give, of "123456789"; from memory. Python's zip
    // reader above compares the sums of whole files.
    CHECK(crc32_of("123456789") == 0xCBF43926U);
    CHECK(crc32_of("") == 0U);
}
