// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>

#include "norms/band.h"

namespace asterism::norms {

/// How a value must stand to a limit. Authors differ in whether the limit itself counts, so all
/// four exist.
enum class Relation { below, above, at_most, at_least };

/// A published limit of a measure, in the unit of its norm.
struct CutOff {
    Relation relation = Relation::below;
    double limit = 0;
    std::string
        means{};  ///< what is said of a value beyond it, in the trade's words: "short", "large"
};

/// Whether a value is beyond the cut-off; nothing when the limit lies across the band.
[[nodiscard]] std::optional<bool> is_beyond(Band value, CutOff const& cut_off);

}  // namespace asterism::norms
