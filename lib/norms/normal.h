// SPDX-License-Identifier: MIT
#pragma once

namespace asterism::norms {

/// Both tail probabilities of one value. They add up to 1, but the smaller one keeps digits that 1
/// - larger loses.
struct Tails {
    double lower = 0.5;
    double upper = 0.5;
};

/// Tails of the standard normal distribution at `z`.
[[nodiscard]] Tails normal_tails(double z);

/// The z whose normal tails are these, from the smaller of the two. Infinite when that tail is 0.
[[nodiscard]] double z_of(Tails tails);

/// Percent of the reference population below `z`: 0 to 100. z = -1.881 is the 3rd centile, z = -2
/// the 2.28th.
[[nodiscard]] double centile_of(double z);

/// The inverse of centile_of, for 0 < centile < 100.
[[nodiscard]] double z_of_centile(double centile);

}  // namespace asterism::norms
