// SPDX-License-Identifier: MIT
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "norms/centile_table.h"
#include "norms/cut_off.h"
#include "norms/days.h"
#include "norms/sex.h"

namespace asterism::norms {

/// What a norm consists of. The first three have a table of their own, the others stand in their
/// description.
enum class Kind { lms, skew_t, very_preterm, mean_sd, centiles, cut_off };

/// By what the rows of a norm are looked up.
enum class Clock {
    none,               ///< one row for all
    gestation_day,      ///< whole days of gestation at birth
    gestation_week,     ///< completed weeks of gestation at birth
    age_day,            ///< days after birth, rounded to the nearest whole day
    post_menstrual_day  ///< gestation at birth plus completed days after birth
};

/// How the numbers of a norm were seen by whoever entered them.
enum class Evidence { full_text, abstract, secondary, memory };

/// The babies for whom a norm is used; what is not given is not limited. All ends are included.
struct Window {
    std::optional<DayRange> gestation{};  ///< days of gestation at birth
    std::optional<std::chrono::hours> age_from{};
    std::optional<std::chrono::hours> age_to{};
    /// Shown beside the others, never the preferred one.
    bool beside = false;
};

/// A warning that holds for part of a norm.
struct Caution {
    std::optional<Sex> sex{};  ///< female or male; nothing: both
    DayRange gestation{};
    std::string text{};
};

/// One entry of `norms:` in ontology/norms/norms.yaml, as plain data.
struct NormDescription {
    std::string norm{};  ///< id, unique
    std::string label{};
    std::vector<std::string>
        measures{};  ///< ids of the measures it covers; one, unless a table has more
    Kind kind = Kind::mean_sd;

    std::string table{};  ///< name of the table, for kinds that have one
    bool bundled = true;  ///< false: the user supplies the table, and may not
    Clock clock =
        Clock::none;  ///< lms: required; mean_sd: gestation_day where the mean depends on it
    /// lms: measures whose tails follow the WHO rule beyond 3 SD.
    std::vector<std::string> who_tail{};

    std::optional<Sex> sex{};  ///< female or male for a trait of one sex; nothing: both
    std::string unit{};        ///< for kinds without a table
    std::optional<double> mean{};
    double mean_per_week =
        0;  ///< rise of the mean per exact week; `mean` is then the value at 0 weeks
    std::optional<double> sd{};
    std::vector<PrintedCentile> centiles{};  ///< ascending
    std::vector<CutOff> cut_offs{};          ///< allowed beside any kind

    std::vector<Window> windows{};  ///< the first that admits the baby counts; empty: everybody
    std::string population{};
    std::vector<std::string> sources{};
    Evidence evidence = Evidence::memory;
    std::string note{};
    std::vector<Caution> cautions{};
};

}  // namespace asterism::norms
