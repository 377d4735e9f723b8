// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "base/diagnostic.h"
#include "cases/csv_record.h"
#include "cases/imported.h"

namespace asterism {

/// Reads either form, told apart by a column `finding`. Columns may be left out and stand in any
/// order. A case of the long form whose rows stand apart is an error: half of a baby's findings
/// would be judged alone.
std::vector<ImportedCase> read_csv_cases(SourcePtr const& source, ImportContext const& context,
                                         Diagnostics& diagnostics);

}  // namespace asterism
