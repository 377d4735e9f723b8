// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/source.h"

namespace asterism {

/// What the changelog says of one version.
struct ReleaseNotes {
    Word version;
    std::string day;  ///< the day from which it is in force, if the heading says it
    std::vector<std::string> changes;  ///< one a list item or paragraph, newlines joined
};

/// Reads a changelog: a heading `## 1.2.3` or `## 1.2.3 (in force from 2031-01-01)` for each
/// version, below it list items and paragraphs. What stands before the first is left out. Reported:
/// a heading that names no version, a version without a change, a version that comes twice.
std::vector<ReleaseNotes> read_release_notes(SourcePtr const& changelog, Diagnostics& diagnostics);

/// The notes of a version and of those before it.
std::vector<ReleaseNotes> up_to(std::vector<ReleaseNotes> const& notes, std::string_view version);

}  // namespace asterism
