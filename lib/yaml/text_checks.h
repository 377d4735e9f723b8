// SPDX-License-Identifier: MIT
#pragma once

#include "base/diagnostic.h"

namespace asterism::yaml {

/// The checks that come before any parser: size, UTF-8, NUL bytes, emptiness. False when parsing is
/// pointless.
bool check_text(SourcePtr const& source, Diagnostics& diagnostics);

}  // namespace asterism::yaml
