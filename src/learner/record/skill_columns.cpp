#include "learner/record/skill_columns.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::learner {

namespace {

/// Half-lives that parameters may have, halved down and doubled up.
constexpr double kShortestHalfLife_d = 0.01;
constexpr double kLongestHalfLife_d = 10000.0;

struct Take {
    const Statement& row;
    int i;
    SkillState& state;

    void operator()(const BoundedColumn& column) const {
        state.*column.member = bounded(row.number(i), column.low, column.high);
    }
    void operator()(TimeColumn member) const { state.*member = row.integer(i); }
    void operator()(NumberColumn member) const { state.*member = static_cast<int>(row.integer(i)); }
};

struct Bind {
    Statement& statement;
    const SkillState& state;

    void operator()(const BoundedColumn& column) const { statement.also(state.*column.member); }
    void operator()(TimeColumn member) const { statement.also(state.*member); }
    void operator()(NumberColumn member) const { statement.also(state.*member); }
};

struct Same {
    const SkillState& a;
    const SkillState& b;

    bool operator()(const BoundedColumn& column) const {
        return same_number(a.*column.member, b.*column.member);
    }
    bool operator()(TimeColumn member) const { return a.*member == b.*member; }
    bool operator()(NumberColumn member) const { return a.*member == b.*member; }
};

/// The type in SQL and what a skill that nobody has touched has.
struct Declared {
    std::string operator()(const BoundedColumn& column) const {
        return fmt::format("REAL NOT NULL DEFAULT {}", SkillState{}.*column.member);
    }
    std::string operator()(TimeColumn member) const {
        return fmt::format("INTEGER NOT NULL DEFAULT {}", SkillState{}.*member);
    }
    std::string operator()(NumberColumn member) const {
        return fmt::format("INTEGER NOT NULL DEFAULT {}", SkillState{}.*member);
    }
};

std::string joined(const std::string& list, std::string_view next) {
    return list.empty() ? std::string(next) : fmt::format("{}, {}", list, next);
}

} // namespace

const std::vector<SkillColumn>& skill_table() {
    using S = SkillState;
    static const std::vector<SkillColumn> kTable{
        {"known", BoundedColumn{&S::known, 0.0, 1.0}, 1},
        {"half_life_d", BoundedColumn{&S::half_life_d, kShortestHalfLife_d, kLongestHalfLife_d}, 1},
        {"last_ms", &S::last_ms, 1},
        {"answers", &S::answers, 1},
        {"right_answers", &S::right, 1},
        {"examples", &S::examples, 1},
        {"misses_in_row", &S::misses_in_row, 1},
        {"stage", &S::stage, 1},
    };
    return kTable;
}

const std::string& skill_names() {
    static const std::string kNames = [] {
        std::string names;
        for (const SkillColumn& column : skill_table())
            names = joined(names, column.name);
        return names;
    }();
    return kNames;
}

const std::string& skill_places() {
    static const std::string kPlaces = [] {
        std::string places;
        for (std::size_t i = 0; i < skill_table().size(); ++i)
            places = joined(places, "?");
        return places;
    }();
    return kPlaces;
}

std::string added_skill_columns(int version) {
    std::string sql;
    for (const SkillColumn& column : skill_table())
        if (column.since == version && version > 1)
            sql += fmt::format("ALTER TABLE skill_state ADD COLUMN {} {};\n", column.name,
                               std::visit(Declared{}, column.member));
    return sql.empty() ? sql : sql + "UPDATE learner SET model = '';\n";
}

SkillState read_skill(const Statement& row, int first) {
    SkillState state;
    for (const SkillColumn& column : skill_table())
        std::visit(Take{row, first++, state}, column.member);
    return state;
}

void bind_skill(Statement& statement, const SkillState& state) {
    for (const SkillColumn& column : skill_table())
        std::visit(Bind{statement, state}, column.member);
}

bool same_skill(const SkillState& a, const SkillState& b) {
    const std::vector<SkillColumn>& table = skill_table();
    return std::all_of(table.begin(), table.end(), [&](const SkillColumn& column) {
        return std::visit(Same{a, b}, column.member);
    });
}

bool same_number(double a, double b) {
    return std::abs(a - b) <= 1e-9 * std::max(1.0, std::abs(a));
}

double bounded(double value, double low, double high) {
    return value >= low ? std::min(value, high) : low;
}

} // namespace steelyard::learner
