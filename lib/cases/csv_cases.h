// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "cases/imported.h"

namespace asterism {

/// The columns of the wide form, one row a baby, in the order written. Lists are split by `|`; an
/// item is written as on the command line (`low-set ears; right`, `weight=2610 g`,
/// `all|except=hips`).
std::vector<std::string_view> const& csv_columns();
/// The columns of the long form, one row a finding; rows of a case stand together.
std::vector<std::string_view> const& csv_long_columns();

/// Reads either form, told apart by a column `finding`. Columns may be left out and stand in any
/// order.
std::vector<ImportedCase> read_csv_cases(SourcePtr const& source, ImportContext const& context,
                                         Diagnostics& diagnostics);

}  // namespace asterism
