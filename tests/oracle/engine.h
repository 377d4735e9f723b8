// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <vector>

#include "assess/assessment.h"
#include "assess/facts.h"
#include "compile/compiled.h"
#include "oracle/oracle.h"

namespace asterism::oracle {

/// The engine's answer read off the evaluated circuit, in the oracle's words.
struct EngineAnswer {
    Answer answer;
    Numbers numbers;  ///< z-scores, centiles and computed measures, which the oracle is given
    std::vector<Truth> values;  ///< by node, with what is not recorded unknown
};

EngineAnswer ask_engine(CompiledRulebook const& book, Case const& baby);

/// What the oracle is given, without the engine's answer.
Numbers numbers_of(CompiledRulebook const& book, Case const& baby);

/// The answer from values of the circuit that somebody else worked out.
Answer read_off(CompiledRulebook const& book, std::span<Truth const> now,
                std::span<Truth const> if_rest_normal);

/// What `assess` prints, as far as it prints it: services, the book's own tallies, and the
/// constellations that have an item. Each line is a difference from the answer.
std::vector<std::string> differences_in_print(Answer const& answer, Assessment const& printed,
                                              Rulebook const& book);

}  // namespace asterism::oracle
