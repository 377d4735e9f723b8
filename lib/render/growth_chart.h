// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "assess/growth_curves.h"

namespace asterism {

/// The chart as a self-contained SVG: centile curves, the baby's point with its error bar, axes
/// with units, and the norm and its population in the title. Readable on light and on dark ground,
/// without script, and with a description for screen readers.
std::string growth_chart_svg(GrowthChart const& chart);

}  // namespace asterism
