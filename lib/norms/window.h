// SPDX-License-Identifier: MIT
#pragma once

#include <tl/expected.hpp>

#include "norms/description.h"
#include "norms/query.h"

namespace asterism::norms {

/// The first window of a norm that admits the baby, or why none does. With several windows the
/// reason is that of the one that comes nearest: right age, wrong gestation rather than the other
/// way round. A gestation band must lie wholly inside the window: a part of it would be an answer
/// for another baby.
[[nodiscard]] tl::expected<Window, NoNorm> admitting_window(NormDescription const& norm,
                                                            Query const& query);

}  // namespace asterism::norms
