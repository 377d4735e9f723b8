// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "assess/assessment.h"
#include "compile/compiled.h"

namespace asterism {

struct ServiceVerdict {
    Verdict verdict = Verdict::not_suggested;
    std::optional<Urgency> urgency;       ///< highest among true rules
    std::optional<Urgency> open_urgency;  ///< highest among rules not settled
};

/// The verdict that follows from the two urgencies.
Verdict verdict_of(ServiceVerdict const& service);

/// One verdict a service, from the evaluated circuit. A service that no single rule settles is
/// still suggested when rules suggest it whichever way each open split of the counting falls (a
/// minor variant that counts, or the major anomaly of its field that takes its place).
std::vector<ServiceVerdict> verdicts(CompiledRulebook const& book, std::span<Truth const> values);

/// The values as they are when nothing found later takes the place of a minor variant that counts:
/// what explains a suggestion that no single rule settles.
std::vector<Truth> with_splits_closed(CompiledRulebook const& book, std::span<Truth const> values);

/// The rules for a service that are true.
std::vector<RuleId> deciding_rules(CompiledRulebook const& book, std::span<Truth const> values,
                                   ServiceId service);

/// The urgency that a rule gives a service; nothing when it does not speak of it.
std::optional<Urgency> urgency_for(CompiledRule const& rule, ServiceId service);

}  // namespace asterism
