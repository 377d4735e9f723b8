// SPDX-License-Identifier: MIT
#include "assess/what_if.h"

namespace asterism {

namespace {

bool is_own_state(Fact::Kind kind) {
    switch (kind) {
        case Fact::Kind::finding:
        case Fact::Kind::history_assumed:
        case Fact::Kind::left:
        case Fact::Kind::right:
        case Fact::Kind::grade: return true;
        default: return false;
    }
}

bool is_detail(Fact::Kind kind) {
    return kind == Fact::Kind::left || kind == Fact::Kind::right || kind == Fact::Kind::grade;
}

bool is_measure(Fact::Kind kind) {
    return kind == Fact::Kind::measure || kind == Fact::Kind::measure_by_eye ||
           kind == Fact::Kind::measure_red_flag;
}

/// The same examination of a baby in whom nothing was found.
Case with_nothing_found(Case baby) {
    baby.present.clear();
    baby.unsure.clear();
    baby.measures.clear();
    return baby;
}

}  // namespace

WhatIf::WhatIf(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts)
    : book_(book),
      facts_(facts),
      now_(asterism::verdicts(book, facts.values)),
      bare_(evaluate(book, with_nothing_found(baby), Rest::unknown).values),
      ripple_(book.circuit) {
    for (auto const& fact : book.facts) {
        if (is_own_state(fact.kind)) finding_facts_[fact.index].push_back(&fact);
    }
}

WhatIf::Change WhatIf::finding(FindingId id, Truth value) const {
    Change change;
    auto const facts = finding_facts_.find(id);
    if (facts == finding_facts_.end()) return change;
    for (auto const* fact : facts->second) {
        // A finding added without its side or grade leaves them open.
        bool const open = value == Truth::yes && is_detail(fact->kind);
        change.emplace_back(fact->node, open ? Truth::unknown : value);
    }
    return change;
}

WhatIf::Change WhatIf::measure_normal(MeasureId id) const {
    Change change;
    for (auto const& fact : book_.facts) {
        if (is_measure(fact.kind) && fact.index == id) change.emplace_back(fact.node, Truth::no);
    }
    return change;
}

WhatIf::Change WhatIf::step_normal(StepId id) const {
    Change change;
    for (auto const& [finding_id, facts] : finding_facts_) {
        auto const& finding = book_.ontology->at(finding_id);
        if (finding.step != id || finding.history) continue;
        if (facts_.states[finding_id].own != Truth::unknown) continue;
        auto const absent = this->finding(finding_id, Truth::no);
        change.insert(change.end(), absent.begin(), absent.end());
    }
    return change;
}

std::vector<ServiceVerdict> WhatIf::verdicts(std::vector<Change const*> const& changes) const {
    return changed(facts_.values, changes);
}

std::vector<ServiceVerdict> WhatIf::alone(FindingId id) const {
    auto const change = finding(id, Truth::yes);
    return changed(bare_, {&change});
}

std::vector<ServiceVerdict> WhatIf::changed(std::vector<Truth> values,
                                            std::vector<Change const*> const& changes) const {
    for (auto const* change : changes) ripple_.apply(values, *change);
    return asterism::verdicts(book_, values);
}

}  // namespace asterism
