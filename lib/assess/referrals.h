// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "assess/evidence.h"
#include "assess/verdicts.h"

namespace asterism {

/// One referral a service in book order, with reasons: the rules that decided it, or the one that
/// came nearest.
std::vector<Referral> referrals(CompiledRulebook const& book, Case const& baby,
                                CaseFacts const& facts,
                                std::vector<ServiceVerdict> const& rest_normal,
                                EvidenceReader const& reader);

}  // namespace asterism
