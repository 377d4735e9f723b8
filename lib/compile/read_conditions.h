// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "compile/names.h"
#include "conditions/read.h"

namespace asterism {

/// The book's conditions after reading: parallel to the book's own lists. A null stands where one
/// was refused.
struct BookConditions {
    std::vector<ConditionPtr> derived;
    std::vector<std::vector<ConditionPtr>>
        tally_items;  ///< by TallyId: the book's tallies, then the constellations'
    std::vector<ConditionPtr> reached;
    std::vector<ConditionPtr> rules;
};

BookConditions read_conditions(Rulebook const& book, Ontology const& ontology,
                               BookNames const& names, Diagnostics& diagnostics);

}  // namespace asterism
