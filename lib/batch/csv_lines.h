// SPDX-License-Identifier: MIT
#pragma once

#include <memory>

#include "batch/line_source.h"

namespace asterism::batch {

/// Turns CSV into blocks of JSON lines, either form, told apart by a column `finding`. Columns may
/// be left out and stand in any order; an unknown one is a failure. A case of the long form of
/// which one row cannot be read is refused as a whole: a verdict without that row would mislead.
/// What a row means is said in `cases/csv_record.h`, as for files read whole. Rows of a case that
/// stand apart are refused when no more than `SeenCases::at_least` cases lie between.
std::unique_ptr<LineSource> csv_lines(ReadBytes read);

}  // namespace asterism::batch
