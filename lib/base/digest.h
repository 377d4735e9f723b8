// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "base/source.h"

namespace asterism {

/// SHA-256 over the texts of some sources in the order given, as 64 hexadecimal digits. Names are
/// left out, so that a copy of the same files in another folder has the same digest.
std::string digest(std::vector<SourcePtr> const& sources);

}  // namespace asterism
