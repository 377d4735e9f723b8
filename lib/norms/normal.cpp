// SPDX-License-Identifier: MIT
#include "norms/normal.h"

#include <boost/math/distributions/normal.hpp>

#include "norms/quiet_policy.h"

namespace asterism::norms {
namespace {

using Normal = boost::math::normal_distribution<double, QuietPolicy>;

}  // namespace

Tails normal_tails(double z) {
    Normal const normal;
    return {cdf(normal, z), cdf(complement(normal, z))};
}

double z_of(Tails tails) {
    Normal const normal;
    if (tails.lower < tails.upper) return quantile(normal, tails.lower);
    return quantile(complement(normal, tails.upper));
}

double centile_of(double z) { return 100 * normal_tails(z).lower; }

double z_of_centile(double centile) { return z_of({centile / 100, (100 - centile) / 100}); }

}  // namespace asterism::norms
