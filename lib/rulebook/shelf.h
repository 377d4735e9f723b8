// SPDX-License-Identifier: MIT
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "rulebook/release.h"
#include "rulebook/rulebook.h"

namespace asterism {

/// A version of a book that can be asked for.
struct ShelvedBook {
    std::string version;
    Date effective{};                ///< the day from which it is in force
    std::optional<Release> release;  ///< nothing for the working book, which may still change
};

/// What can be known of a book without reading its rules.
struct BookOutline {
    RulebookHeader header;
    std::vector<Service> services;
    std::string digest;
};

/// Every version of one book: the released ones and the working one. Opening it reads the list of
/// releases and the working book's header; a book is read only when it is asked for.
class Shelf {
public:
    /// Gives the files below a place of the book's folder, in order of name: "" the working book
    /// (releases left out), "releases/1.0.0/" a released one. Nothing there is an empty list.
    using Files = std::function<std::vector<SourcePtr>(std::string const& below)>;

    /// Nothing when the list or the header cannot be read. Reported too: a working book whose
    /// effective date is not later than the last release's (unless it is that release).
    static std::optional<Shelf> open(Files files, Diagnostics& diagnostics);

    /// In the order in which they came into force.
    std::vector<ShelvedBook> const& books() const { return books_; }
    /// The book in force on a day; nothing before the first.
    ShelvedBook const* in_force(Date day) const;
    /// The book with this version.
    ShelvedBook const* find(std::string_view version) const;

    /// Reads a book. A released one must have the digest, version and date that the list names:
    /// `release-changed` otherwise, and nothing is returned.
    std::shared_ptr<Rulebook const> load(ShelvedBook const& book, Diagnostics& diagnostics) const;
    /// The same without its vignettes, for who only judges babies: nothing is said of them.
    std::shared_ptr<Rulebook const> load_to_judge(ShelvedBook const& book,
                                                  Diagnostics& diagnostics) const;
    /// Reads a book's outline alone. Reported is what is wrong with the files where header and
    /// services stand, and a released book that is not the one listed; all else that is wrong with
    /// the book shows when it is loaded.
    std::optional<BookOutline> outline(ShelvedBook const& book, Diagnostics& diagnostics) const;

private:
    explicit Shelf(Files files) : files_(std::move(files)) {}

    std::vector<SourcePtr> files_of(ShelvedBook const& book) const;
    static std::shared_ptr<Rulebook const> load(std::vector<SourcePtr> const& files,
                                                ShelvedBook const& book, Diagnostics& diagnostics);

    Files files_;
    std::vector<ShelvedBook> books_;
};

/// The book in force on a day, or an error `no-book-in-force` placed at the words that gave the
/// day.
ShelvedBook const* in_force(Shelf const& shelf, Word const& day, Diagnostics& diagnostics);

}  // namespace asterism
