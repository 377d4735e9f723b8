// SPDX-License-Identifier: MIT
#include "rulebook/release_ready.h"

#include <algorithm>

#include <fmt/format.h>

namespace asterism {

namespace {

/// False when the version is released already: then its day says nothing more.
bool check_version(Rulebook const& book, std::vector<Release> const& released,
                   Diagnostics& diagnostics) {
    auto const& header = book.header;
    auto const place = header.id.span;
    auto const version = parse_version(header.version);
    if (!version) {
        diagnostics.error(
            "bad-version", place,
            fmt::format("expected a version such as `1.2.3`, found `{}`", header.version));
        return true;
    }
    for (auto const& release : released) {
        if (release.version.text != header.version) continue;
        auto const* const same = release.digest.text == book.digest
                                     ? "nothing has changed since"
                                     : "the book has changed since: raise `version`";
        diagnostics.error("already-released", place,
                          fmt::format("version `{}` is released already", header.version), same);
        return false;
    }
    if (!released.empty() && version <= parse_version(released.back().version.text)) {
        diagnostics.error("release-order", place,
                          fmt::format("version `{}` does not come after `{}`, the last released",
                                      header.version, released.back().version.text));
    }
    return true;
}

}  // namespace

void check_ready(Rulebook const& book, std::vector<Release> const& released,
                 std::vector<ReleaseNotes> const& notes, Diagnostics& diagnostics) {
    if (!check_version(book, released, diagnostics)) return;
    auto const& effective = book.header.effective;
    auto const day = parse_date(effective.text);
    if (!day) {
        diagnostics.error("bad-date", effective.span, day.error());
    } else if (!released.empty() && *day <= released.back().date) {
        diagnostics.error(
            "effective-not-later", effective.span,
            fmt::format("`{}` is not later than {}, the day of version `{}`", effective.text,
                        released.back().effective.text, released.back().version.text));
    }
    bool const told = std::any_of(notes.begin(), notes.end(), [&](ReleaseNotes const& one) {
        return one.version.text == book.header.version;
    });
    if (!told) {
        diagnostics.error(
            "missing-notes", book.header.id.span,
            fmt::format("CHANGELOG.md says nothing of version `{}`", book.header.version),
            fmt::format("add `## {}` and what changed", book.header.version));
    }
}

}  // namespace asterism
