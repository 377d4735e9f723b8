// SPDX-License-Identifier: MIT
#include "norms/computed.h"

#include <algorithm>
#include <cmath>

namespace asterism::norms {
namespace {

Band subtract(Band a, Band b) { return {a.low - b.high, a.high - b.low}; }

std::optional<Band> divide(Band a, Band b, double factor) {
    if (!(b.low > 0) || a.low < 0) return std::nullopt;
    return Band{factor * a.low / b.high, factor * a.high / b.low};
}

Band magnitude(Band band) {
    auto const high = std::max(std::abs(band.low), std::abs(band.high));
    if (band.low <= 0 && band.high >= 0) return {0, high};
    return {std::min(std::abs(band.low), std::abs(band.high)), high};
}

}  // namespace

std::optional<Band> compute(Computation computation, Band a, Band b) {
    switch (computation) {
        case Computation::ratio: return divide(a, b, 1);
        case Computation::percent: return divide(a, b, 100);
        case Computation::mean: return Band{(a.low + b.low) / 2, (a.high + b.high) / 2};
        case Computation::difference: return subtract(a, b);
        case Computation::absolute_difference: return magnitude(subtract(a, b));
        default: return std::nullopt;
    }
}

std::optional<Band> z_difference(Reading const& a, Reading const& b) {
    if (a.norm != b.norm || a.evaluations.size() != b.evaluations.size()) return std::nullopt;
    std::optional<Band> all;
    for (std::size_t i = 0; i < a.evaluations.size(); ++i) {
        auto const& of_a = a.evaluations[i];
        auto const& of_b = b.evaluations[i];
        if (of_a.sex != of_b.sex || of_a.key != of_b.key) return std::nullopt;
        auto const one = subtract(of_a.with_margin, of_b.with_margin);
        all = all ? cover(*all, one) : one;
    }
    return all;
}

}  // namespace asterism::norms
