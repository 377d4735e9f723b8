// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "base/diagnostic.h"

namespace asterism {

/// Every diagnostic as `file:line:column: error: message [code]`, the line, a caret and `help:`.
std::string diagnostics_text(Diagnostics const& diagnostics);

}  // namespace asterism
