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

Verdict tried(CaseTrial& trial, std::vector<WhatIf::Change const*> const& changes,
              ServiceId service) {
    for (auto const* change : changes) trial.apply(*change);
    auto const result = trial.verdict(service);
    trial.undo();
    return result;
}

}  // namespace

WhatIf::WhatIf(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts,
               CaseTrial& trial)
    : book_(book), baby_(baby), facts_(facts), trial_(trial), own_facts_(own_facts(book)) {}

Grouped<WhatIf::OwnFact> WhatIf::own_facts(CompiledRulebook const& book) {
    return {book.ontology->findings.size(), [&](auto put) {
                for (auto const& fact : book.facts) {
                    if (is_own_state(fact.kind))
                        put(fact.index, OwnFact{fact.node, is_detail(fact.kind)});
                }
            }};
}

WhatIf::Change WhatIf::finding(FindingId id, Truth value) const {
    Change change;
    for (auto const& fact : own_facts_.at(id)) {
        // A finding added without its side or grade leaves them open.
        bool const open = value == Truth::yes && fact.detail;
        change.emplace_back(fact.node, open ? Truth::unknown : value);
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

std::vector<WhatIf::Change> WhatIf::steps_normal() const {
    std::vector<Change> changes(book_.ontology->steps.size());
    for (FindingId id = 0; id < facts_.states.size(); ++id) {
        if (facts_.states[id].own != Truth::unknown) continue;
        auto const& frame = book_.ontology->frame(id);
        if (frame.history) continue;
        auto const absent = finding(id, Truth::no);
        auto& change = changes[frame.step];
        change.insert(change.end(), absent.begin(), absent.end());
    }
    return changes;
}

Verdict WhatIf::verdict(std::vector<Change const*> const& changes, ServiceId service) const {
    return tried(trial_, changes, service);
}

std::vector<ServiceId> WhatIf::newly_suggested(Change const& change) const {
    trial_.apply(change);
    auto result = trial_.newly_suggested();
    trial_.undo();
    return result;
}

std::vector<ServiceId> WhatIf::suggested_alone(FindingId id) const {
    if (!bare_) {
        auto const nothing = with_nothing_found(baby_);
        bare_ = std::make_unique<CaseTrial>(trial_, evaluate(book_, nothing, Rest::unknown).values);
    }
    bare_->apply(finding(id, Truth::yes));
    auto result = bare_->suggested();
    bare_->undo();
    return result;
}

}  // namespace asterism
