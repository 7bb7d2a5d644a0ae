// What is kept of a learner is its owner's alone, whatever the umask says.

#include "learner/record/record.h"
#include "learner/shipped_course.h"

#include <sys/stat.h>

using namespace steelyard::learner;
namespace fs = std::filesystem;

namespace {

const Clock kNow{kEvening_ms, 0};

constexpr auto kOthers = fs::perms::group_all | fs::perms::others_all;

/// The umask of this program, until it goes out of scope.
class Umask {
public:
    explicit Umask(mode_t mask) : before_(umask(mask)) {}
    ~Umask() { umask(before_); }
    Umask(const Umask&) = delete;
    Umask& operator=(const Umask&) = delete;

private:
    mode_t before_;
};

/// Opens a record, answers and backs up, so that every kind of file is there; then looks at them.
void check_all_private(const fs::path& folder) {
    auto opened = open_record(folder, kNow);
    REQUIRE(opened);
    auto ada = opened->record.learner_named("Ada");
    if (!*ada)
        *ada = *opened->record.add_learner("Ada", kNow);
    REQUIRE(opened->record.add_answer((**ada).id, shipped_course(),
                                      answer_about("balance", true, kEvening_ms), kNow));
    REQUIRE(opened->record.back_up_if_due(kNow));
    int files = 0;
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
        INFO(entry.path());
        CHECK((entry.status().permissions() & fs::perms::all) ==
              (entry.is_directory() ? fs::perms::owner_all
                                    : fs::perms::owner_read | fs::perms::owner_write));
        ++files;
    }
    // Record, its two journals, lock, backups and one in there.
    CHECK(files >= 6);
}

} // namespace

TEST_CASE("a record's folders are 0700 and its files 0600, whatever the umask") {
    for (const mode_t mask : {0000U, 0022U, 0077U, 0277U}) {
        const TestFolder above;
        const Umask set(mask);
        const fs::path folder = above.path() / "of" / "mine";
        check_all_private(folder);
        CHECK((fs::status(folder).permissions() & fs::perms::all) == fs::perms::owner_all);
    }
}

TEST_CASE("a record that others could read is shut to them when it is opened") {
    const TestFolder folder;
    check_all_private(folder.path());
    for (const auto& entry : fs::recursive_directory_iterator(folder.path()))
        fs::permissions(entry.path(), entry.is_directory() ? static_cast<fs::perms>(0755)
                                                           : static_cast<fs::perms>(0644));
    fs::permissions(folder.path(), static_cast<fs::perms>(0755));
    check_all_private(folder.path());
    CHECK((fs::status(folder.path()).permissions() & kOthers) == fs::perms::none);
}

TEST_CASE("a folder that holds other things too stays open to others; the record in it does not") {
    const TestFolder folder;
    fs::create_directory(folder.path() / "shared");
    fs::permissions(folder.path(), static_cast<fs::perms>(0755));
    REQUIRE(open_record(folder.path(), kNow));
    CHECK(fs::status(folder.path()).permissions() == static_cast<fs::perms>(0755));
    CHECK((fs::status(folder.path() / kRecordFile).permissions() & kOthers) == fs::perms::none);
}
