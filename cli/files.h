// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "base/source.h"

namespace asterism::cli {

/// A file, or standard input for `-`. A file that cannot be read is reported; one that is larger
/// than the readers accept is cut just past their limit, so that they refuse it with a proper
/// message.
SourcePtr read_source(std::string const& path, Diagnostics& diagnostics);

/// Whether a file's name says that it is CSV, packed or not.
bool named_csv(std::string const& path);

/// Every .yaml and .csv file below a folder, sorted by path.
std::vector<SourcePtr> read_folder(std::string const& folder, Diagnostics& diagnostics);

/// The built-in files whose names start with a prefix.
std::vector<SourcePtr> embedded_sources(std::string const& prefix);

}  // namespace asterism::cli
