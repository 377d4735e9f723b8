// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "compile/compiled.h"
#include "rulebook/release_notes.h"

namespace asterism {

/// A piece of text that may lead to an entry of the booklet. All texts are plain; a writer escapes
/// them for its format.
struct HandbookLink {
    std::string text;
    std::string anchor;  ///< empty: leads nowhere
};

/// A condition as a sentence, or as an opening with parts, each of them a clause again.
struct HandbookClause {
    std::string text;
    std::vector<HandbookClause> parts;
};

/// One named thing: a finding, a rule, a source.
struct HandbookEntry {
    std::string anchor;
    std::string number;  ///< by which the index leads to it in print
    std::string title;
    std::string badge;  ///< class or urgency, as an id; empty for none
    std::string badge_words;
    std::vector<std::string> paragraphs;
    std::vector<HandbookClause> clauses;
    std::vector<std::pair<std::string, std::vector<HandbookLink>>> rows;
};

struct HandbookSection {
    std::string anchor;
    std::string title;
    std::vector<std::string> paragraphs;
    std::vector<HandbookEntry> entries;
    std::vector<HandbookSection> sections;
    bool compact = false;  ///< entries of one line each
};

/// The book as a booklet, before it is written in a format.
struct Handbook {
    std::string title;
    std::vector<std::string> about;  ///< version, day, digests
    std::vector<HandbookSection> chapters;
    std::vector<std::pair<std::string, std::vector<HandbookLink>>> index;  ///< by first letter
};

/// What stands after a link in a list: nothing but a space after a whole sentence.
std::string handbook_stop(HandbookLink const& link, bool last);

/// Everything that the book says, for a reader: findings head to toe with class and how to look,
/// counting, derived findings, constellations, rules in sentences by service, promises, sources,
/// changes, index.
Handbook handbook(CompiledRulebook const& book, std::vector<ReleaseNotes> const& notes);

/// One self-contained page with a style for print.
std::string handbook_html(Handbook const& handbook);
std::string handbook_markdown(Handbook const& handbook);

}  // namespace asterism
