// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "audit/control_chart.h"
#include "audit/proportion.h"
#include "render/html.h"

namespace asterism {

/// One line of a forest of intervals; all from 0 to 1.
struct ForestLine {
    std::string label;
    std::string words;  ///< the figures, behind the label
    double value = 0;
    audit::Interval interval;
};

/// A picture of intervals, one below the other, made of SVG within the page; its colours are the
/// page's. The caption is read out in place of the picture.
void forest_plot(Markup& markup, std::string const& caption, std::vector<ForestLine> const& lines);

/// A p-chart: the share of each period, the mean, and stepped limits. Points outside are diamonds.
void chart_plot(Markup& markup, std::string const& caption, audit::ControlChart const& chart);

/// CSS that the pictures need.
std::string_view audit_plot_style();

}  // namespace asterism
