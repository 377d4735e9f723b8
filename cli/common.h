// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "options.h"

namespace asterism::cli {

/// Parses, shows the help when asked (true: the verb is done), and sets the log level.
bool parse_or_help(Options& options, std::vector<std::string> const& arguments);

}  // namespace asterism::cli
