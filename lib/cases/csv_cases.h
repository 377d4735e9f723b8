// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "base/diagnostic.h"
#include "cases/csv_record.h"
#include "cases/imported.h"

namespace asterism {

/// The place of a row's cell, counted from 0, when the row stands on one line.
Span csv_cell_span(SourcePtr const& source, std::uint32_t line, std::size_t cell);
/// The names that stand in a source's first line, each with its place.
std::vector<Word> csv_header_words(SourcePtr const& source, std::vector<std::string> const& cells);

/// Reads either form, told apart by a column `finding`. A case of the long form whose rows stand
/// apart is an error: half of a baby's findings would be judged alone.
std::vector<ImportedCase> read_csv_cases(SourcePtr const& source, ImportContext const& context,
                                         Diagnostics& diagnostics);

/// Reads rows of a file whose header was read before; the source begins with the first of them.
std::vector<ImportedCase> read_csv_rows(SourcePtr const& rows, CsvForm const& form,
                                        ImportContext const& context, Diagnostics& diagnostics);

}  // namespace asterism
