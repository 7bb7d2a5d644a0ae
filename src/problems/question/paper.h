#pragma once
// Choosing and drawing the instances of a paper, without writing them out.

#include "problems/bank/bank.h"
#include "problems/draw/instance.h"
#include "problems/question/generator.h"

#include <functional>

namespace steelyard::problems {

/// Hands the instances of make_paper to `visit` one by one, in its order, so that a large pool
/// needs no more memory than one paper.
/// @param visit  false when enough has been seen: the drawing ends there
/// @return nothing, or why the plan cannot be met; what was visited before stays visited
tl::expected<void, NoQuestion> draw_paper(const Bank& bank, const PaperPlan& plan,
                                          const std::function<bool(const Instance&)>& visit);

/// Whether two instances would feel like the same question: one family, every drawn quantity within
/// 5 % and the same change asked; of a written family the same item.
bool nearly_same(const Instance& one, const Instance& other);

/// Whether two instances are the same question in every number and word.
bool exactly_same(const Instance& one, const Instance& other);

} // namespace steelyard::problems
