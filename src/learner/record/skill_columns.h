#pragma once
// The columns of a skill's state, once: name, member, bounds. Schema, upsert, select and check read
// this table. For the parts of the record only.

#include "learner/model/mastery.h"
#include "learner/record/file/database.h"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace steelyard::learner {

/// A number that is brought within the bounds in which it was written when it is read: a file may
/// have been damaged, and what is shown of a learner is never infinite.
struct BoundedColumn {
    double SkillState::*member;
    double low;
    double high;
};
using TimeColumn = TimeMs SkillState::*;
using NumberColumn = int SkillState::*;

struct SkillColumn {
    std::string_view name;
    std::variant<BoundedColumn, TimeColumn, NumberColumn> member;
    int since; ///< version of the record that brought it; 2 or more: added by schema_steps()
};

/// In the order in which they are written and read. New ones go to the end.
const std::vector<SkillColumn>& skill_table();

/// "known, half_life_d, ..."
const std::string& skill_names();

/// "?, ?, ...": as many as there are columns.
const std::string& skill_places();

/// SQL that adds the columns of a version and has every standing folded anew; empty when it brought
/// none.
std::string added_skill_columns(int version);

/// Reads a state from the current row, whose columns from `first` on are those of the table.
SkillState read_skill(const Statement& row, int first);

/// Binds the state's columns after what is bound already.
void bind_skill(Statement& statement, const SkillState& state);

/// Whether two states are the same but for the last bits of numbers.
bool same_skill(const SkillState& a, const SkillState& b);

/// Sums of the same numbers in the same order: anything beyond the last bits is a difference.
bool same_number(double a, double b);

/// The value, within bounds; the lower one when it is no number.
double bounded(double value, double low, double high);

} // namespace steelyard::learner
