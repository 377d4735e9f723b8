// SPDX-License-Identifier: MIT
#include "cases/hpo_mapping.h"

#include <algorithm>

namespace asterism {

namespace {

/// The one parent that all of them have; nothing when they differ or one has none.
std::optional<FindingId> common_parent(Ontology const& ontology,
                                       std::vector<FindingId> const& findings) {
    auto const parent = ontology.at(findings.front()).parent;
    bool const common = std::all_of(findings.begin(), findings.end(),
                                    [&](FindingId id) { return ontology.at(id).parent == parent; });
    return common ? parent : std::nullopt;
}

}  // namespace

HpoMapper::HpoMapper(ImportContext const& context)
    : ontology_(context.ontology), hpo_(context.hpo) {
    for (FindingId id = 0; id < ontology_.findings.size(); ++id) {
        for (auto const& term : ontology_.at(id).hpo) {
            auto const in_force = current(term.text);
            if (!in_force.empty()) by_id_[in_force].push_back(id);
        }
    }
    if (!hpo_) return;
    for (auto const& [id, findings] : by_id_) note_below(id, findings);
}

void HpoMapper::note_below(std::string const& id, std::vector<FindingId> const& findings) {
    for (auto const& level : hpo_->above(id)) {
        for (auto const& ancestor : level)
            below_[ancestor].insert(findings.begin(), findings.end());
    }
}

std::string HpoMapper::current(std::string const& id) const {
    return hpo_ ? hpo_->current(id) : id;
}

std::vector<FindingId> HpoMapper::at(std::string const& id) const {
    auto const found = by_id_.find(id);
    return found == by_id_.end() ? std::vector<FindingId>() : found->second;
}

void HpoMapper::take_exact(std::vector<FindingId> const& exact, MappedTerm& term) const {
    auto const stand_in = common_parent(ontology_, exact);
    term.how = Mapping::exact;
    if (exact.size() == 1) {
        term.findings = exact;
    } else if (stand_in) {
        term.findings = {*stand_in};
    } else {
        term.how = Mapping::shared_id;
        term.findings = exact;
    }
}

void HpoMapper::climb(std::string const& id, MappedTerm& term) const {
    if (!hpo_) return;
    for (auto const& level : hpo_->above(id)) {
        for (auto const& ancestor : level) {
            auto const here = at(ancestor);
            if (here.size() != 1) continue;
            if (term.via.empty()) term.via = ancestor;
            term.findings.push_back(here.front());
        }
        if (term.findings.empty()) continue;
        term.how = Mapping::by_ancestor;
        return;
    }
}

MappedTerm HpoMapper::observed(Word const& id, std::string const& label) const {
    MappedTerm term{id, label, TermState::observed, Mapping::nowhere, {}, {}};
    auto const in_force = current(id.text);
    if (in_force.empty()) return term;
    auto const exact = at(in_force);
    if (exact.empty()) {
        climb(in_force, term);
        return term;
    }
    if (in_force != id.text) term.via = in_force;
    take_exact(exact, term);
    return term;
}

MappedTerm HpoMapper::excluded(Word const& id, std::string const& label) const {
    MappedTerm term{id, label, TermState::excluded, Mapping::nowhere, {}, {}};
    auto const in_force = current(id.text);
    if (in_force.empty()) return term;
    term.findings = at(in_force);  // all of them: what is not there is no kind of it
    if (!term.findings.empty()) {
        term.how = Mapping::exact;
        if (in_force != id.text) term.via = in_force;
        return term;
    }
    auto const below = below_.find(in_force);
    if (below == below_.end()) return term;
    term.findings.assign(below->second.begin(), below->second.end());
    term.how = Mapping::from_above;
    return term;
}

std::string HpoMapper::id_of_present(FindingId finding) const {
    for (auto const& id : ontology_.at(finding).hpo) {
        if (observed(id, {}).findings == std::vector{finding}) return id.text;
    }
    return {};
}

std::string HpoMapper::id_of_absent(FindingId finding) const {
    for (auto const& id : ontology_.at(finding).hpo) {
        if (excluded(id, {}).findings == std::vector{finding}) return id.text;
    }
    return {};
}

}  // namespace asterism
