// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "base/source.h"

namespace asterism {

inline constexpr auto prove_schema = "asterism.prove/1";

/// One promise as it was decided, in words.
struct ProofView {
    std::string id, because;
    Span place;
    std::string result;  ///< holds, broken, not-proven
    long long ms = 0;
    std::string finding, said, case_text;  ///< of a promise that is broken
    std::string why_not;                   ///< of one that is not proven
};

/// One line a promise; under a broken one what the engine says and the case, under one not proven
/// why. What "holds" means, and the usual caution, stand at the end.
std::string proof_text(std::vector<ProofView> const& proofs);

/// Keys: DEVELOPERS.md.
nlohmann::ordered_json proof_json(std::vector<ProofView> const& proofs);

}  // namespace asterism
