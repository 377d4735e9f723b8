// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/source.h"
#include "base/time.h"
#include "yaml/table.h"

namespace asterism {

/// Where released versions stand, seen from the folder of their book.
inline constexpr std::string_view releases_folder = "releases/";
inline constexpr std::string_view release_list_name = "releases/releases.yaml";

/// A released book as the list of releases names it: it never changes.
struct Release {
    Word version;
    Word effective;  ///< the day from which it is in force
    Word digest;     ///< SHA-256 of its files, as `Rulebook::digest`
    Date date{};     ///< `effective`, read
};

struct ReleaseList {
    std::vector<Release> releases;
};

/// The field table of the list: reads it and describes it for schemas.
yaml::Table<ReleaseList> const& release_list_table();

/// Reads the list of releases, oldest first. Reported: a version that is not `1.2.3` or comes
/// twice, versions or dates that do not rise from line to line, a digest that is none.
std::vector<Release> read_releases(SourcePtr const& list, Diagnostics& diagnostics);

/// The line that a new release adds to the list.
std::string release_line(std::string_view version, std::string_view effective,
                         std::string_view digest);

/// Reads `1.2.3`: three whole numbers. Nothing for anything else.
std::optional<std::array<int, 3>> parse_version(std::string_view text);

/// The files of a book without those of its releases and without its changelog. The folder that all
/// names share is not looked at, so that a released book can be read by itself.
std::vector<SourcePtr> files_of_book(std::vector<SourcePtr> const& files);
/// Those of them that are no vignettes: what is judged by, and released.
std::vector<SourcePtr> content_of_book(std::vector<SourcePtr> const& files);
/// The digest that a book of these files has: SHA-256 of its content.
std::string digest_of_book(std::vector<SourcePtr> const& files);

}  // namespace asterism
