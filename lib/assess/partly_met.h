// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "assess/evidence.h"

namespace asterism {

/// How far a rule that did not hold came: a share of its condition, and what it lacked in words.
struct Progress {
    double share = 0;
    std::vector<std::string> lacks;
};

Progress progress(CompiledCondition const& condition, EvidenceReader const& reader,
                  CaseFacts const& facts, CompiledRulebook const& book);

}  // namespace asterism
