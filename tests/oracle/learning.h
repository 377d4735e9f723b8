// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "assess/facts.h"
#include "oracle/answer.h"
#include "oracle/random_cases.h"
#include "oracle/subject.h"

namespace asterism::oracle {

/// The case with one thing more known than before: an unknown finding present or absent, a side, a
/// grade, a step done, a measure, the sex, the age, the gestation or its days. Nothing when the
/// chosen thing is known already.
///
/// Not learning but amending, and never done here: what was recorded is changed; a finding turns
/// out familial; history and results of tests, which count as absent until told.
std::optional<Case> learn_one_thing(Subject const& subject, Case const& baby, Dice& dice);

/// True when a number speaks against what stood recorded without it: a finding judged by eye is
/// measured, or a band across a red flag's cut-off, read as past it, becomes narrower.
bool amends_by_measure(Subject const& subject, CaseFacts const& before, CaseFacts const& after);

/// What was settled before and is otherwise now, one line each.
std::vector<std::string> flips(Subject const& subject, Answer const& before, Answer const& after);

}  // namespace asterism::oracle
