// SPDX-License-Identifier: MIT
#include "audit/control_chart.h"

#include <algorithm>
#include <cmath>

namespace asterism::audit {

ControlChart control_chart(std::vector<ChartPoint> points) {
    ControlChart chart;
    std::uint64_t count = 0, total = 0;
    for (auto const& point : points) count += point.count, total += point.total;
    if (total == 0) return chart;
    chart.mean = static_cast<double>(count) / static_cast<double>(total);
    for (auto& point : points) {
        if (point.total == 0) continue;
        double const half =
            3 * std::sqrt(chart.mean * (1 - chart.mean) / static_cast<double>(point.total));
        point.low = std::max(0.0, chart.mean - half);
        point.high = std::min(1.0, chart.mean + half);
        chart.points.push_back(std::move(point));
    }
    return chart;
}

}  // namespace asterism::audit
