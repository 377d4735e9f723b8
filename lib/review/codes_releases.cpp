// SPDX-License-Identifier: MIT
// Pages of codes about versions and released books.
#include "review/codes.h"

#include <iterator>

namespace asterism {

namespace {

constexpr CodePage pages[]{
    {"already-released", "The version has been released.", "Two books would carry one number.",
     "Raise `version` in the header.", "version: 0.2.0, released -> version: 0.3.0"},
    {"bad-digest", "The digest is not 64 hexadecimal digits.", "A released book is known by it.",
     "Let `asterism release` write the list.", "sha256: abc -> the digest that release printed"},
    {"bad-version", "The text is no version.", "Versions are ordered, and an answer must name one.",
     "Write three whole numbers, such as 1.2.3.", "version: next -> version: 1.3.0"},
    {"effective-not-later", "The book takes effect no later than the version before it.",
     "It would be unclear which book was in force on a day.", "Set `effective` to a later day.",
     "effective: 2026-01-01 after 2026-03-01 -> effective: 2026-06-01"},
    {"empty-notes", "The changelog has the version's heading and nothing below it.",
     "Readers must learn what changed and why.", "Write what changed.",
     "## 0.3.0 and no line -> ## 0.3.0 and its changes"},
    {"missing-notes", "The changelog says nothing of the version.",
     "Readers must learn what changed and why.", "Write an entry under the version's heading.",
     "no heading -> ## 0.3.0 (in force from 2026-06-01)"},
    {"no-book-in-force", "No version was in force on the day asked for.",
     "There was no rule to judge by.", "Ask for a day from the first version on.",
     "--as-of 2001-01-01 -> --as-of 2026-06-01"},
    {"release-changed", "The files of a released book differ from the list.",
     "An audit would judge past babies by rules that were not in force.",
     "Restore the files; release a new version for what changed.",
     "an edit below releases/ -> an edit of the working book"},
    {"release-order", "Released versions are not in order of number and date.",
     "It would be unclear which book was in force on a day.",
     "List them in order; a new version takes effect later.", "0.2.0 before 0.1.0 -> 0.1.0, 0.2.0"},
    {"second-notes", "A version stands twice in the changelog.",
     "Only one entry could be the true one.", "Join the two.", "## 0.2.0 twice -> once"},
};

}  // namespace

std::vector<CodePage> const& code_pages_of_releases() {
    static std::vector<CodePage> const all(std::begin(pages), std::end(pages));
    return all;
}

}  // namespace asterism
