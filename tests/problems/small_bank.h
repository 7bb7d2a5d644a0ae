#pragma once
// A bank of a few lines, written to a folder of its own, for tests of reading and marking.

#include "problems/bank/bank.h"

#include <filesystem>
#include <fstream>
#include <string>

namespace steelyard::problems {

/// A folder that is gone when the test is.
class SmallBank {
public:
    SmallBank() : folder_(unique_folder()) {
        write("skills.toml",
              "[[skill]]\nid = \"arms\"\ntitle = \"Arms\"\nabout = \"Find arms.\"\n");
        write("wrong_rules.toml", R"([[rule]]
id = "distance-for-arm"
title = "Distance for arm"
feedback = "Measure square to the line."
ask = "Which length did you use?"
parts_at = ["effort_arm"]
draws_wrong = "effort_distance"
draws_right = "effort_arm"

[[rule]]
id = "sine-cosine-swapped"
title = "Sine and cosine swapped"
feedback = "Take the sine."
ask = "Sine or cosine?"
parts_at = ["effort_arm"]
)");
    }
    ~SmallBank() {
        std::error_code ignored;
        std::filesystem::remove_all(folder_, ignored);
    }
    SmallBank(const SmallBank&) = delete;
    SmallBank& operator=(const SmallBank&) = delete;

    void write(const std::string& name, const std::string& text) const {
        const std::filesystem::path path = folder_ / name;
        std::filesystem::create_directories(path.parent_path());
        std::ofstream(path) << text;
    }

    Bank load() const { return load_bank(folder_); }
    const std::filesystem::path& folder() const { return folder_; }

private:
    static std::filesystem::path unique_folder() {
        static int count = 0;
        const std::filesystem::path folder = std::filesystem::temp_directory_path() /
                                             ("steelyard_small_bank_" + std::to_string(++count));
        std::filesystem::remove_all(folder);
        std::filesystem::create_directories(folder);
        return folder;
    }

    std::filesystem::path folder_;
};

/// A text with one part replaced; the part must be there.
inline std::string replaced(std::string text, const std::string& from, const std::string& to) {
    return text.replace(text.find(from), from.size(), to);
}

/// One complete family: a rope on a bar, 1 m out at 30°, so that its arm is 0.5 m.
inline const char* const kRopeFamily = R"toml(id = "rope"
title = "Rope on a bar"
skill = "arms"
strategy = "sine"
kind = "numeric"
prompt = "A rope pulls {effort_distance} from the pin at {effort_angle} to the bar. How long is its moment arm?"
labels = ["effort_distance"]
draw = { effort_distance = "1 m", effort_angle = "30 °" }
ask = { find = "effort_arm", unit = "cm" }

[setup]
length = "effort_distance"
axis = 0
axis_name = "the pin"
from_above = true
effort = { name = "the rope", at = "effort_distance", direction = "pi - effort_angle" }

[[step]]
find = "effort_arm"
by = "effort_distance * sin(effort_angle)"
says = "Distance times sine."

[wrong]
distance-for-arm = "effort_distance"
sine-cosine-swapped = "effort_distance * cos(effort_angle)"
)toml";

} // namespace steelyard::problems
