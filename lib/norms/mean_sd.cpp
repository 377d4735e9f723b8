// SPDX-License-Identifier: MIT
#include "norms/mean_sd.h"

namespace asterism::norms {

double mean_at(MeanSd const& norm, int day) { return norm.mean + norm.per_week * (day / 7.0); }

double mean_sd_z(double value, MeanSd const& norm, int day) {
    return (value - mean_at(norm, day)) / norm.sd;
}

double mean_sd_value(double z, MeanSd const& norm, int day) {
    return mean_at(norm, day) + z * norm.sd;
}

}  // namespace asterism::norms
