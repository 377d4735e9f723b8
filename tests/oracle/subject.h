// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "compile/compiled.h"
#include "oracle/oracle.h"

namespace asterism::oracle {

/// A book with both of its readers: the engine's and the oracle's.
struct Subject {
    std::shared_ptr<Ontology const> ontology;
    std::shared_ptr<Rulebook const> book;
    CompiledRulebook compiled;
    std::unique_ptr<Oracle const> oracle;

    std::vector<std::string> finding_names() const;
};

/// Everything that was reported, as text, for the message of a test that cannot go on.
std::string problems(Diagnostics const& diagnostics);

/// Throws with all that was reported when the text has errors.
std::shared_ptr<Ontology const> ontology_from(std::string_view text);
std::shared_ptr<Rulebook const> book_from(std::string_view text);
/// Null when the compiler refuses the book.
std::unique_ptr<Subject> subject(std::shared_ptr<Rulebook const> book,
                                 std::shared_ptr<Ontology const> ontology,
                                 Diagnostics& diagnostics);
/// A book that must be accepted.
std::unique_ptr<Subject> subject(std::string_view book, std::shared_ptr<Ontology const> ontology);

/// rules/newborn and ontology as they are on disk, below the working folder. Loaded once.
Subject const& shipped_book();

/// Asks both and lists where they differ; empty when they agree.
std::vector<std::string> disagreements(Subject const& subject, Case const& baby);

/// As above, with what `assess` prints held against it too.
std::vector<std::string> disagreements_in_print(Subject const& subject, Case const& baby);

}  // namespace asterism::oracle
