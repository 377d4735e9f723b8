// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "cases/case.h"

namespace asterism {

/// Something that a case says and a format cannot.
struct NotSaid {
    std::string case_id;
    std::string what;
    std::string why;
};

/// The statements of a case with history items apart: they have a list of their own.
struct SplitStatements {
    std::vector<Statement const*> findings;
    std::vector<Statement const*> history;
};
SplitStatements split_history(Case const& baby, Ontology const& ontology);

/// What `examined` must say so that reading it gives the same steps: `all`, steps, and steps that
/// are excepted. `exact` is false when no wording of steps and regions does.
struct ExaminedWords {
    std::vector<std::string> done;
    std::vector<std::string> except;
    bool exact = true;
};
ExaminedWords examined_words(Case const& baby, Ontology const& ontology);

/// The grade's own word; empty when none was stated.
std::string grade_text(Statement const& statement, Ontology const& ontology);

/// The case with canonical ids, in the keys of a case file.
nlohmann::ordered_json case_json(Case const& baby, Ontology const& ontology,
                                 std::vector<NotSaid>& not_said);

}  // namespace asterism
