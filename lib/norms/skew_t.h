// SPDX-License-Identifier: MIT
#pragma once

#include "norms/normal.h"

namespace asterism::norms {

/// Skew Student t of type 3 (Fernandez and Steel 1998), the distribution of the INTERGROWTH-21st
/// newborn size standards (Villar J et al. Lancet 2014;384:857-868).
struct SkewT {
    double mu = 0;     ///< mode, in the unit of the measure
    double sigma = 1;  ///< scale, > 0
    double nu = 1;     ///< skewness, > 0; 1 is symmetric
    double tau = 10;   ///< degrees of freedom, > 0, not necessarily whole
};

[[nodiscard]] double skew_t_density(double y, SkewT const& parameters);

/// Probability below and above `y`.
[[nodiscard]] Tails skew_t_tails(double y, SkewT const& parameters);

/// The value with these tail probabilities; the smaller tail decides.
[[nodiscard]] double skew_t_quantile(Tails tails, SkewT const& parameters);

/// z-score: the normal deviate of the probability, which is not (y - mu) / sigma. For a girl born
/// at 37w3d with a head of 29.5 cm the quotient would be -2.86, the z-score is -2.71.
[[nodiscard]] double skew_t_z(double y, SkewT const& parameters);

/// The inverse of skew_t_z.
[[nodiscard]] double skew_t_value(double z, SkewT const& parameters);

}  // namespace asterism::norms
