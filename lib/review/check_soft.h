// SPDX-License-Identifier: MIT
#pragma once

#include "base/diagnostic.h"
#include "compile/compiled.h"

namespace asterism {

/// No referral may rest on one soft measure alone: with every test of it past its cut-off, and
/// every finding derived from it present, no service is suggested, whether all else is unknown or
/// normal. The same for any two soft measures together. Head circumference, weight, penile length,
/// saturations and pressures are never soft.
void check_soft_measures(CompiledRulebook const& book, Diagnostics& diagnostics);

}  // namespace asterism
