// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "norms/norm.h"
#include "norms/query.h"

namespace asterism::norms {

/// What has to be said beside a reading: what was assumed, what makes a band of it, and the
/// cautions of the norm that hold for this baby. Sentences without a final stop, in a fixed order.
[[nodiscard]] std::vector<std::string> reading_notes(Norm const& norm, Window const& window,
                                                     Query const& query, Reading const& reading);

}  // namespace asterism::norms
