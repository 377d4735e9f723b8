// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "cases/case.h"
#include "yaml/table.h"

namespace asterism {

/// `{ finding: ..., side: ..., grade: ..., familial: ... }`, or the bare name.
struct StatementSyntax {
    Word finding;
    std::optional<Sides> side;
    Word grade;
    bool familial = false;
    Span familial_span;
};

struct DecisionsSyntax {
    std::vector<Word> referred;
    Word on;
};

/// A case as written, before any name is looked up.
struct CaseSyntax {
    Word id;
    Word gestation;
    Word age;
    Word born;
    Word examined_on;
    Sex sex = Sex::not_given;
    yaml::Node examined;
    yaml::Node history;
    yaml::Node measures;
    std::vector<StatementSyntax> findings;
    std::vector<StatementSyntax> absent;
    std::vector<StatementSyntax> unsure;
    std::optional<DecisionsSyntax> decisions;
};

/// The field table of a case: reads it and describes it for schemas.
yaml::Table<CaseSyntax> const& case_table();
yaml::Reader<StatementSyntax> statement_reader();

}  // namespace asterism
