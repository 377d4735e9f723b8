// SPDX-License-Identifier: MIT
#include "norms/lms.h"

#include <cmath>

namespace asterism::norms {
namespace {

/// Below this the power is taken as its limit, the logarithm: the quotient would lose all its
/// digits.
constexpr double tiny_power = 1e-8;

constexpr double tail_starts = 3;

bool is_logarithmic(Lms lms) { return std::abs(lms.l) < tiny_power; }

/// One straight tail: it starts at the third SD line and rises by `step` for each further SD.
struct Tail {
    double start;
    double step;
};

std::optional<Tail> tail_of(Lms lms, double side) {
    auto const third = lms_value(side * tail_starts, lms);
    auto const second = lms_value(side * (tail_starts - 1), lms);
    if (!third || !second) return std::nullopt;
    return Tail{*third, side * (*third - *second)};
}

}  // namespace

std::optional<double> lms_z(double y, Lms lms) {
    if (!(y > 0)) return std::nullopt;
    if (is_logarithmic(lms)) return std::log(y / lms.m) / lms.s;
    return (std::pow(y / lms.m, lms.l) - 1) / (lms.l * lms.s);
}

std::optional<double> lms_value(double z, Lms lms) {
    if (is_logarithmic(lms)) return lms.m * std::exp(lms.s * z);
    auto const base = 1 + lms.l * lms.s * z;
    if (!(base > 0)) return std::nullopt;
    return lms.m * std::pow(base, 1 / lms.l);
}

std::optional<double> lms_z_with_who_tail(double y, Lms lms) {
    auto const z = lms_z(y, lms);
    if (!z || std::abs(*z) <= tail_starts) return z;
    auto const side = *z > 0 ? 1.0 : -1.0;
    auto const tail = tail_of(lms, side);
    if (!tail) return std::nullopt;
    return side * tail_starts + (y - tail->start) / tail->step;
}

std::optional<double> lms_value_with_who_tail(double z, Lms lms) {
    if (std::abs(z) <= tail_starts) return lms_value(z, lms);
    auto const side = z > 0 ? 1.0 : -1.0;
    auto const tail = tail_of(lms, side);
    if (!tail) return std::nullopt;
    return tail->start + (z - side * tail_starts) * tail->step;
}

}  // namespace asterism::norms
