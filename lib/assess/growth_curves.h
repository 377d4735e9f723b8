// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <tl/expected.hpp>

#include "assess/measure_values.h"

namespace asterism {

/// One line of a chart: the value at one centile or z-score over the days.
struct GrowthLine {
    std::string label;  ///< "10" for a centile, "-2 SD"
    double z = 0;
    std::vector<std::pair<double, double>> points;  ///< day (or week, by the clock) and value
};

/// Everything that a growth chart draws, in the unit of the norm; self-contained.
struct GrowthChart {
    enum class Days { gestation, completed_weeks, age, post_menstrual };

    std::string title;
    std::vector<std::string> subtitles;
    std::string value_label;  ///< measure and unit
    std::string unit;
    Days days = Days::gestation;
    std::vector<GrowthLine> lines;
    NumberBand day{};          ///< of the baby; a band when its gestation is not known to the day
    double value = 0;          ///< as read
    NumberBand with_margin{};  ///< with the reading error
    std::string point_label;
};

/// The curves of a norm for the baby's sex, and its point among them. `norm` empty: the preferred
/// norm. The error says, in the words of a diagnostic, why there is no chart: the norm does not
/// apply, it has no curves, or the sex that it needs is not known.
tl::expected<GrowthChart, std::string> growth_chart(Ontology const& ontology,
                                                    norms::Standards const& standards,
                                                    Case const& baby, MeasureReading const& reading,
                                                    std::string_view norm = {});

}  // namespace asterism
