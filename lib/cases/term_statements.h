// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "cases/imported.h"

namespace asterism {

/// Turns mapped terms into the statements of a case and keeps the list of what became of each.
class TermStatements {
public:
    TermStatements(Ontology const& ontology, ImportedCase& result, Diagnostics& diagnostics)
        : ontology_(ontology), result_(result), diagnostics_(diagnostics) {}

    /// `severity`: a word such as `mild`, taken as the grade where the finding has that grade.
    void add(MappedTerm term, Sides sides, std::string const& severity);
    /// Takes out what cannot hold together, with a warning: a record can exclude at one time what
    /// it shows at another, and what is present stands.
    void settle();

private:
    Statement statement(MappedTerm const& term, FindingId finding, Sides sides,
                        std::string const& severity);
    void take_grade(std::string const& severity, MappedTerm const& term, Statement& statement);
    void settle_grades();
    bool contradicted(Statement const& absent) const;
    void warn(Statement const& statement, std::string_view what);

    Ontology const& ontology_;
    ImportedCase& result_;
    Diagnostics& diagnostics_;
};

/// `HP:0000369 (Low-set ears)`: how a term is quoted as the words of the record.
std::string quoted_term(MappedTerm const& term);

}  // namespace asterism
