// SPDX-License-Identifier: MIT
#pragma once

#include <chrono>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "cases/case.h"
#include "review/promise.h"
#include "review/sat/solver.h"

namespace asterism {

enum class ProofResult : std::uint8_t { holds, broken, not_proven };

/// `holds`, `broken`, `not-proven`.
std::string_view to_text(ProofResult result);

struct Proof {
    std::string id;
    std::string because;
    Span place;
    ProofResult result = ProofResult::not_proven;
    std::chrono::milliseconds time{};
    std::optional<Case> counterexample;  ///< as small as leaving things out makes it
    std::string case_text;               ///< the same as a file that `assess` reads
    std::string finding;                 ///< of `for-each` or `adding`, the one that breaks it
    std::string said;                    ///< what the engine says of the counterexample
    std::string why_not;                 ///< why it is not proven
};

/// Decides one promise for every baby that a case can describe, fully examined or not, but for
/// babies of whom a finding of the other sex is stated. `when` and `holds` mean "known to be met".
///
/// What is proven is what single rules decide. A suggestion that stands only because it follows
/// whichever way an open count falls comes on top: it cannot break `suggest`, and it breaks `never`
/// only where a fully examined baby does too. `keeps` compares what single rules decide before and
/// after the finding is stated; what was known besides stays known.
///
/// A counterexample is read back from its own text and judged by the engine before it is reported.
Proof prove(Promises const& promises, CompiledPromise const& promise, sat::Limits const& limits);

/// Whether the engine's answer breaks the promise for this very case; empty when it does not, else
/// what it says.
std::string broken_by(Promises const& promises, CompiledPromise const& promise, Case const& baby,
                      std::string& finding);

}  // namespace asterism
