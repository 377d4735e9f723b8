// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <string_view>
#include <vector>

#include "batch/line_source.h"

namespace asterism::batch {

/// Columns of the wide form, one row a baby. Lists are split by `|`; items are written as on the
/// command line (`low-set ears; right`, `weight=2610 g`, `all|except=hips`).
std::vector<std::string_view> const& wide_columns();
/// Columns of the long form, one row a finding; the rows of a case stand together.
std::vector<std::string_view> const& long_columns();

/// Turns CSV into blocks of JSON lines, either form, told apart by a column `finding`. Columns may
/// be left out and stand in any order; an unknown one is a failure. A case of the long form of
/// which one row cannot be read is refused as a whole: a verdict without that row would mislead.
std::unique_ptr<LineSource> csv_lines(ReadBytes read);

}  // namespace asterism::batch
