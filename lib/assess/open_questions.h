// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "assess/assessment.h"
#include "assess/facts.h"
#include "assess/trial.h"
#include "compile/compiled.h"

namespace asterism {

/// What a set of open rules waits for.
struct OpenQuestions {
    std::vector<StepToDo> steps;
    std::vector<std::string> facts;  ///< sex, age, gestation, measures, history items
};

/// Follows the unknown nodes below the given literals down to the unknown facts, grouped by exam
/// step: essential steps first, then those that bear on most rules, then head to toe.
OpenQuestions open_questions(CompiledRulebook const& book, CaseFacts const& facts,
                             std::vector<Literal> const& open);

/// Everything that was not examined, whatever the rules ask. `trial` starts from the values of
/// `facts` and is left as it was.
NotExamined not_examined(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts,
                         CaseTrial& trial);

}  // namespace asterism
