// SPDX-License-Identifier: MIT
#pragma once

#include "norms/norm.h"
#include "norms/query.h"

namespace asterism::norms {

/// What one norm says of one number. `preferred` is set when the admitting window is not a
/// side-by-side one; which of several stays preferred is for Standards to say. The norm covers the
/// measure.
[[nodiscard]] Answer read_norm(Norm const& norm, Query const& query);

}  // namespace asterism::norms
