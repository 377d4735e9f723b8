// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>

#include "book.h"
#include "rulebook/release_notes.h"
#include "rulebook/shelf.h"

namespace asterism::cli {

/// Every version of the book of a folder, or of the built-in book when the folder is empty.
std::optional<Shelf> open_shelf(std::string const& folder, Diagnostics& diagnostics);

/// The book of a folder (or the built-in one) that was in force on a day, as --as-of gives it.
std::shared_ptr<Rulebook const> load_rulebook_of(std::string const& folder, std::string const& day,
                                                 Diagnostics& diagnostics);

/// The book that a word names: a version on the shelf, or else a folder; a UsageError names the
/// versions when it is neither.
std::shared_ptr<Rulebook const> named_book(std::string const& name,
                                           std::optional<Shelf> const& shelf,
                                           Diagnostics& diagnostics);

/// The CHANGELOG.md of a folder (or of the built-in book); null when there is none.
SourcePtr changelog_of(std::string const& folder, Diagnostics& diagnostics);

}  // namespace asterism::cli
