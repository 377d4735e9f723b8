// SPDX-License-Identifier: MIT
/// Simulated newborns without a major anomaly or illness, and the exact distribution of their
/// counts.
#pragma once

#include <vector>

#include "compile/compiled.h"
#include "review/newborns.h"

namespace asterism::testing {

/// What a healthy baby can show, with this default for a minor variant that nobody counted.
std::vector<Frequency> frequencies(CompiledRulebook const& book, double minor_default);

/// The rows of bedside minor variants, per 10,000, lowest first.
std::vector<double> published_minor_rows(CompiledRulebook const& book);

/// The exact distribution of the number of counted minor keys: position n is the probability of n.
std::vector<double> exact_minor_counts(CompiledRulebook const& book,
                                       std::vector<Frequency> const& frequencies);

/// From `at_least` on, added up.
double tail(std::vector<double> const& distribution, std::size_t at_least);

}  // namespace asterism::testing
