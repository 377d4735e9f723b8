// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "assess/assessment.h"
#include "assess/changes.h"
#include "compile/compiled.h"

namespace asterism {

/// The version of the engine, as it stands in every result.
std::string_view engine_version();

/// Judges one case: no I/O, no clock, no globals. The case must have been read without errors. What
/// would change the answer costs more than the answer.
Assessment assess(CompiledRulebook const& book, Case const& baby,
                  ChangesTold told = ChangesTold::none);

/// One condition of a rule with the value seen at it, for `--why`.
struct TraceLine {
    int depth = 0;
    Truth value = Truth::unknown;
    std::string text;
    std::string seen;
    std::string place;
};

/// Every condition of a rule, fired or not, outermost first. An unknown rule gives nothing.
std::vector<TraceLine> trace(CompiledRulebook const& book, Case const& baby, std::string_view rule);

/// The red flags among the stated findings of a case that has errors elsewhere: "act on these".
std::vector<Evidence> recognised_red_flags(CompiledRulebook const& book, Case const& baby);

}  // namespace asterism
