// SPDX-License-Identifier: MIT
#pragma once

#include "compile/book_builder.h"

namespace asterism {

/// Builds the keys of a tally that counts classes. A key counts once when at least one of its
/// findings does: the finding is present, is the most specific of its chain that is classed, is not
/// a familial minor variant, and, if minor, stands in no field of a counted major.
void build_counted_keys(CompiledRulebook& result, BookBuilder& builder, CompiledTally& tally);

}  // namespace asterism
