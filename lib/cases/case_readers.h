// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "cases/imported.h"

namespace asterism {

/// A format in which cases can come: one file and one line of the table.
struct CaseReader {
    std::string_view name;
    std::string_view summary;
    std::vector<std::string_view> endings;  ///< of file names, for folders and for guessing
    bool foreign;                           ///< its terms are mapped, and the mapping is reported
    std::vector<ImportedCase> (*read)(SourcePtr const&, ImportContext const&, Diagnostics&);
};

std::vector<CaseReader> const& case_readers();
/// The reader with this name, or null.
CaseReader const* case_reader(std::string_view name);
/// The first reader that a file's ending names; null when none does.
CaseReader const* case_reader_for(std::string_view file_name);

}  // namespace asterism
