#pragma once
// The course that comes with the program, and a folder that is gone when the test is.

#include "catch.h"
#include "learner/course/course.h"
#include "learner/model/answer.h"

#include <cstdio>
#include <filesystem>
#include <string>
#include <unistd.h>

namespace steelyard::learner {

/// Loaded once: reading the bank takes longer than most tests.
inline const Course& shipped_course() {
    static const problems::Bank kBank =
        problems::load_bank(std::filesystem::path(STEELYARD_SOURCE_DIR) / "question_bank");
    static const Course kCourse =
        *load_course(kBank, std::filesystem::path(STEELYARD_SOURCE_DIR) / "assets" / "learner");
    return kCourse;
}

class TestFolder {
public:
    TestFolder() {
        static int number = 0;
        path_ = std::filesystem::temp_directory_path() /
                ("steelyard-learner-" + std::to_string(getpid()) + "-" + std::to_string(++number));
        std::filesystem::remove_all(path_);
        std::filesystem::create_directories(path_);
    }
    ~TestFolder() {
        std::error_code ignored;
        std::filesystem::permissions(path_, std::filesystem::perms::owner_all, ignored);
        std::filesystem::remove_all(path_, ignored);
    }
    TestFolder(const TestFolder&) = delete;
    TestFolder& operator=(const TestFolder&) = delete;

    const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

/// 2026-11-25 18:00 UTC.
inline constexpr TimeMs kEvening_ms = 1795629600000;

/// A marked answer to a skill, with the family named after it.
inline Answer answer_about(const std::string& skill, bool right, TimeMs at_ms) {
    Answer answer;
    answer.at_ms = at_ms;
    answer.code = "AAAAA-AAAAA";
    answer.skill = skill;
    answer.family = skill + "-family";
    answer.outcome = right ? Outcome::right : Outcome::wrong;
    answer.took_ms = 30000;
    return answer;
}

} // namespace steelyard::learner
