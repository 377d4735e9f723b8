// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>

#include "assess/assessment.h"
#include "assess/facts.h"
#include "compile/compiled.h"

namespace asterism {

class CaseTrial;

/// Of which services an answer tells what would change their verdict.
enum class ChangesTold : std::uint8_t {
    none,
    in_brief,  ///< beside a suggestion nothing is told of the services that are not suggested
    all,
};

/// Whether it is told of a service with this verdict, in an answer that suggests some service or
/// none.
bool is_told(ChangesTold told, Verdict verdict, bool any_suggested);

/// Fills `what_would_change` of the referrals of which it is told. Exact within its bounds: all
/// sets without which a suggestion falls when it hangs on at most ten things, else sets of up to
/// four (`more_without` says when larger ones may exist); additions of one finding, or of two, in a
/// large book those that a partly met rule asks for (`more_with`); and the fewest exam steps up to
/// five.
void add_what_would_change(CompiledRulebook const& book, Case const& baby, Assessment& assessment);
/// The same where the case has been evaluated; `trial` starts from the values of `facts` and is
/// left as it was.
void add_what_would_change(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts,
                           CaseTrial& trial, ChangesTold told, Assessment& assessment);

}  // namespace asterism
