// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include <tl/expected.hpp>

#include "norms/mean_sd.h"
#include "norms/parameter_table.h"
#include "norms/query.h"

namespace asterism::norms {

/// What turns a value into a z-score, for each kind of norm that has z-scores.
struct LmsScale {
    LmsTable table;
    std::vector<std::string> who_tail{};  ///< measures whose tails follow the WHO rule
};
struct SkewTScale {
    SkewTTable table;
};
struct VeryPretermScale {
    std::vector<VeryPreterm> equations{};
};
struct MeanSdScale {
    MeanSd parameters;
};
using Scale = std::variant<LmsScale, SkewTScale, VeryPretermScale, MeanSdScale>;

/// Where on a scale a baby stands: sex is female or male where the scale is by sex; `key` as the
/// norm's clock says.
struct Place {
    std::string_view measure{};
    Sex sex = Sex::undetermined;
    int key = 0;
};

/// True when the two sexes have parameters of their own.
[[nodiscard]] bool is_by_sex(Scale const& scale);

/// The z-score of a value in the unit of the scale, or why there is none: not_in_table, value or
/// beyond.
[[nodiscard]] tl::expected<double, Why> z_at(Scale const& scale, Place place, double value);

/// The value at a z-score; nothing when the scale has no such place or value.
[[nodiscard]] std::optional<double> value_at(Scale const& scale, Place place, double z);

/// First and last key for a measure and sex; nothing for a scale without a clock or without the
/// measure.
[[nodiscard]] std::optional<DayRange> keys_of(Scale const& scale, std::string_view measure,
                                              Sex sex);

/// Unit of a measure on a scale that has a table; null when it has none for it.
[[nodiscard]] std::string const* unit_of(Scale const& scale, std::string_view measure);

}  // namespace asterism::norms
