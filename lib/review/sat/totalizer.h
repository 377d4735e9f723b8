// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <vector>

#include "review/sat/solver.h"

namespace asterism::sat {

struct WeightedLit {
    Lit literal = 0;
    std::int64_t weight = 1;
};

/// A literal equal to "the weights of the true inputs reach the threshold": plain clauses for "all"
/// and "any", else a totalizer over the sums that can occur, cut off at the threshold, after
/// division by the weights' greatest common divisor (Bailleux and Boufkhad 2003; with weights:
/// Joshi, Martins and Manquinho 2015; from memory). Weights are positive.
Lit at_least(Solver& solver, std::int64_t threshold, std::vector<WeightedLit> inputs);

}  // namespace asterism::sat
