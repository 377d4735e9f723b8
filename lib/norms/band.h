// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

namespace asterism::norms {

/// A closed interval of numbers: what is known of a value that is not known exactly. A point has
/// low == high. Infinite ends are allowed (a value below the lowest printed centile has no lower
/// end).
struct Band {
    double low = 0;
    double high = 0;

    friend bool operator==(Band const&, Band const&) = default;
};

/// The band that holds one value only.
[[nodiscard]] Band point(double value);

/// The smallest band that holds both.
[[nodiscard]] Band cover(Band a, Band b);

/// The band widened by `margin` (>= 0) on both sides.
[[nodiscard]] Band widen(Band band, double margin);

/// True when low == high.
[[nodiscard]] bool is_point(Band band);

/// Three-valued comparisons of everything in a band with a cut-off: true or false when all of the
/// band agrees, nothing when the cut-off lies across it. This is how "both sexes, used only if they
/// agree" is decided.
[[nodiscard]] std::optional<bool> lies_below(Band band, double cut_off);
[[nodiscard]] std::optional<bool> lies_above(Band band, double cut_off);
[[nodiscard]] std::optional<bool> lies_at_most(Band band, double cut_off);
[[nodiscard]] std::optional<bool> lies_at_least(Band band, double cut_off);

}  // namespace asterism::norms
