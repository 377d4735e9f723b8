// SPDX-License-Identifier: MIT
#include "audit/poisson_binomial.h"

#include <numeric>

namespace asterism::audit {

std::vector<double> count_distribution(std::vector<double> const& probabilities) {
    std::vector<double> chance{1};
    for (double const p : probabilities) {
        chance.push_back(0);
        for (auto k = chance.size() - 1; k > 0; --k)
            chance[k] = chance[k] * (1 - p) + chance[k - 1] * p;
        chance[0] *= 1 - p;
    }
    return chance;
}

double at_least(std::vector<double> const& distribution, std::size_t count) {
    if (count >= distribution.size()) return 0;
    // From the small end, so that the rare many is not lost beside the common few.
    return std::accumulate(distribution.rbegin(),
                           distribution.rend() - static_cast<std::ptrdiff_t>(count), 0.0);
}

}  // namespace asterism::audit
