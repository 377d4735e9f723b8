// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

namespace asterism::audit {

/// How many of some independent events happen: element k is the probability that exactly k do
/// (the Poisson binomial distribution), exact but for rounding, by adding one event at a time.
std::vector<double> count_distribution(std::vector<double> const& probabilities);

/// The probability that at least so many happen.
double at_least(std::vector<double> const& distribution, std::size_t count);

}  // namespace asterism::audit
