// SPDX-License-Identifier: MIT
#include "norms/band.h"

#include <algorithm>

namespace asterism::norms {
namespace {

std::optional<bool> negated(std::optional<bool> truth) {
    if (truth) return !*truth;
    return std::nullopt;
}

}  // namespace

Band point(double value) { return {value, value}; }

Band cover(Band a, Band b) { return {std::min(a.low, b.low), std::max(a.high, b.high)}; }

Band widen(Band band, double margin) { return {band.low - margin, band.high + margin}; }

bool is_point(Band band) { return band.low == band.high; }

std::optional<bool> lies_below(Band band, double cut_off) {
    if (band.high < cut_off) return true;
    if (band.low >= cut_off) return false;
    return std::nullopt;
}

std::optional<bool> lies_above(Band band, double cut_off) {
    if (band.low > cut_off) return true;
    if (band.high <= cut_off) return false;
    return std::nullopt;
}

std::optional<bool> lies_at_most(Band band, double cut_off) {
    return negated(lies_above(band, cut_off));
}

std::optional<bool> lies_at_least(Band band, double cut_off) {
    return negated(lies_below(band, cut_off));
}

}  // namespace asterism::norms
