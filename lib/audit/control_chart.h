// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace asterism::audit {

/// One period of a p-chart. Limits lie three standard errors from the mean of all periods, cut at
/// 0 and 1, and depend on the period's own size.
struct ChartPoint {
    std::string period;
    std::uint64_t count = 0;
    std::uint64_t total = 0;
    double low = 0;
    double high = 1;

    double share() const { return static_cast<double>(count) / static_cast<double>(total); }
    bool outside() const { return total > 0 && (share() < low || share() > high); }
};

/// A p-chart (Shewhart 1931): what changes more between periods than chance explains?
struct ControlChart {
    double mean = 0;
    std::vector<ChartPoint> points;  ///< periods without a subject are left out
};

/// The limits of counts that are in order of time already.
ControlChart control_chart(std::vector<ChartPoint> points);

}  // namespace asterism::audit
