// SPDX-License-Identifier: MIT
#pragma once

namespace asterism::norms {

/// A trait taken as normally distributed, with a mean that may rise in a straight line with
/// gestation.
struct MeanSd {
    double mean = 0;  ///< the mean; where it depends on gestation, the value of the line at 0 weeks
    double per_week = 0;  ///< rise of the mean per exact week of gestation
    double sd = 1;        ///< standard deviation, > 0
};

/// Mean at `day` of gestation; `day` does not matter when per_week is 0.
[[nodiscard]] double mean_at(MeanSd const& norm, int day);

[[nodiscard]] double mean_sd_z(double value, MeanSd const& norm, int day);
[[nodiscard]] double mean_sd_value(double z, MeanSd const& norm, int day);

}  // namespace asterism::norms
