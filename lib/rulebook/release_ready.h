// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "base/diagnostic.h"
#include "rulebook/release.h"
#include "rulebook/release_notes.h"
#include "rulebook/rulebook.h"

namespace asterism {

/// Whether a working book may be released after those that were. Reported: a version that is not
/// `1.2.3`, is released already, or does not come after the last; a day that is not later than the
/// last's; a version of which the changelog says nothing.
void check_ready(Rulebook const& book, std::vector<Release> const& released,
                 std::vector<ReleaseNotes> const& notes, Diagnostics& diagnostics);

}  // namespace asterism
