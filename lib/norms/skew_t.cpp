// SPDX-License-Identifier: MIT
#include "norms/skew_t.h"

#include <boost/math/distributions/students_t.hpp>

#include "norms/quiet_policy.h"

namespace asterism::norms {
namespace {

using StudentT = boost::math::students_t_distribution<double, QuietPolicy>;

/// The two halves are Student t curves scaled by 1/nu and nu; this makes their areas add up to one.
double halves(SkewT const& p) { return 1 + p.nu * p.nu; }

/// Probability below the mode, where the two halves meet.
double below_mode(SkewT const& p) { return 1 / halves(p); }

}  // namespace

double skew_t_density(double y, SkewT const& p) {
    StudentT const t(p.tau);
    auto const deviation = (y - p.mu) / p.sigma;
    auto const scaled = y < p.mu ? p.nu * deviation : deviation / p.nu;
    return 2 * p.nu / (p.sigma * halves(p)) * pdf(t, scaled);
}

Tails skew_t_tails(double y, SkewT const& p) {
    StudentT const t(p.tau);
    auto const deviation = (y - p.mu) / p.sigma;
    if (y < p.mu) {
        auto const lower = 2 * cdf(t, p.nu * deviation) / halves(p);
        return {lower, 1 - lower};
    }
    auto const upper = 2 * p.nu * p.nu * cdf(complement(t, deviation / p.nu)) / halves(p);
    return {1 - upper, upper};
}

double skew_t_quantile(Tails tails, SkewT const& p) {
    StudentT const t(p.tau);
    if (tails.lower < below_mode(p)) {
        return p.mu + p.sigma / p.nu * quantile(t, tails.lower * halves(p) / 2);
    }
    auto const upper_half = tails.upper * halves(p) / (2 * p.nu * p.nu);
    return p.mu + p.sigma * p.nu * quantile(complement(t, upper_half));
}

double skew_t_z(double y, SkewT const& p) { return z_of(skew_t_tails(y, p)); }

double skew_t_value(double z, SkewT const& p) { return skew_t_quantile(normal_tails(z), p); }

}  // namespace asterism::norms
