// SPDX-License-Identifier: MIT
#pragma once

#include <memory>

#include "batch/line_source.h"
#include "cases/csv_record.h"

namespace asterism::batch {

struct CsvOptions {
    std::string name{};  ///< of the file, for places
    CsvBeside beside{};  ///< columns beside those of a case; kept ones are keys of the JSON
    /// The rows of each case go with it, so that whoever refuses it can say where it is wrong. Left
    /// to him then: to read again the rows that contradict each other (a problem without message),
    /// and to find cases whose rows stand apart.
    bool keep_rows = false;
};

/// Turns CSV into blocks of JSON lines, either form. What header and rows mean is said in
/// `cases/csv_record.h`, as for files read whole; an error in the header is a failure. A case of
/// the long form of which one row cannot be read is refused as a whole: a verdict without that row
/// would mislead. Rows of a case that stand apart are refused when no more than
/// `SeenCases::at_least` cases lie between.
std::unique_ptr<LineSource> csv_lines(ReadBytes read, CsvOptions options = {});

}  // namespace asterism::batch
