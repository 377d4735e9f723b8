// SPDX-License-Identifier: MIT
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include <tl/expected.hpp>

#include "norms/band.h"
#include "norms/cut_off.h"
#include "norms/days.h"
#include "norms/sex.h"

namespace asterism::norms {

/// A number measured on a baby, and what is known of the baby.
struct Query {
    std::string measure{};  ///< id
    double value = 0;
    std::string unit{};
    /// Half the resolution of the instrument, in `unit`, >= 0; 0 for values that are exact as read.
    double margin = 0;
    Sex sex = Sex::undetermined;
    /// Gestation at birth in whole days. Weeks without days are all seven days:
    /// completed_weeks(37).
    std::optional<DayRange> gestation{};
    /// Age when measured. Not given: taken as measured at birth, and said so.
    std::optional<std::chrono::hours> age{};
};

/// The z-score for one of the possible sexes and days.
struct Evaluation {
    Sex sex = Sex::undetermined;  ///< undetermined: the norm is the same for both sexes
    int key = 0;                  ///< day or completed week of the norm's clock; 0 without a clock
    double z = 0;
    Band with_margin{};  ///< the z-scores of the value less and plus its margin

    friend bool operator==(Evaluation const&, Evaluation const&) = default;
};

/// A published cut-off and whether the value is beyond it; nothing when the margin does not allow
/// to say.
struct Crossing {
    CutOff cut_off{};
    std::string unit{};
    std::optional<bool> beyond{};
};

/// What one norm says of the number.
struct Reading {
    std::string norm{};
    /// The norm to go by when no other was asked for: at most one reading is preferred.
    bool preferred = false;
    /// z-scores of the value as read, over all days and sexes that are possible: a point when both
    /// are known. Nothing for norms that print only centiles or a cut-off.
    std::optional<Band> z{};
    /// The same with the margin of the reading: what a cut-off is to be compared with.
    std::optional<Band> z_with_margin{};
    /// Percent of the reference population below, 0 to 100; for printed centiles the bracket,
    /// margin included.
    std::optional<Band> centile{};
    std::vector<Evaluation> evaluations{};
    std::vector<Crossing> crossings{};
    std::vector<std::string> notes{};
};

/// Why a norm says nothing.
enum class Why {
    unit,               ///< the value is in a unit that does not measure this
    value,              ///< not a finite number, or not above 0 where the norm needs it
    sex,                ///< the norm is for the other sex, or the sex is undetermined
    gestation_unknown,  ///< the norm needs it
    gestation_outside,  ///< the gestation is not, or not wholly, in the range of the norm
    age_unknown,        ///< the norm is for later than birth
    age_outside,        ///< measured at another age than the norm is for
    not_in_table,       ///< the table has no row for this day
    not_supplied,       ///< the user has not given the table
    beyond              ///< the distribution has no such value
};

struct NoNorm {
    std::string norm{};
    Why why = Why::value;
    std::string reason{};  ///< in the words of a diagnostic: lower case, no final stop

    friend bool operator==(NoNorm const&, NoNorm const&) = default;
};

using Answer = tl::expected<Reading, NoNorm>;

}  // namespace asterism::norms
