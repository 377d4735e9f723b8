// SPDX-License-Identifier: MIT
/// A test-side reading of GA4GH phenopackets (v2 JSON) as cases of ours: findings, sex and age
/// only. `diseases` and `interpretations` hold the answer and are never looked at. Gestation stays
/// unknown and nothing is marked examined: a packet has no way to say "looked at and normal" but
/// `excluded`.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "hpo_graph.h"
#include "ontology/ontology.h"

namespace asterism::testing {

/// The way from an HPO term to our findings.
enum class Mapping {
    exact,        ///< a finding carries the term's id
    by_ancestor,  ///< observed: the nearest finding above it, through is-a
    from_above,   ///< excluded: our findings below it, through is-a
    shared_id,    ///< several findings carry the id and have no common parent that could stand in
    nowhere,
};

struct MappedTerm {
    std::string hpo;    ///< as written
    std::string label;  ///< as written
    Mapping how = Mapping::nowhere;
    std::vector<FindingId> findings;
};

struct PhenopacketCase {
    std::string id;
    std::string sex;                 ///< `female`, `male` or empty
    std::optional<double> age_days;  ///< at the last encounter
    bool before_birth = false;       ///< the last encounter has a gestational age
    std::vector<MappedTerm> observed;
    std::vector<MappedTerm> excluded;
    std::vector<FindingId> present;  ///< each once, in the order of the ontology
    std::vector<FindingId> absent;   ///< without what contradicts `present`
    int contradictions = 0;  ///< exclusions left out because the packet also shows it present

    /// The case as one would write it, JSON; `present` may be narrowed by the caller before.
    std::string text(Ontology const& ontology) const;
};

/// Days in an ISO 8601 duration such as `P1Y2M3W4D`; nothing for a bare `P` and for times of day.
std::optional<double> days_of(std::string const& iso8601);

class PhenopacketReader {
public:
    PhenopacketReader(Ontology const& ontology, HpoGraph const& hpo);
    PhenopacketCase read(nlohmann::json const& packet) const;

    /// Where an observed term leads.
    MappedTerm observed(std::string const& hpo, std::string const& label) const;
    /// Where an excluded term leads: never to something above it.
    MappedTerm excluded(std::string const& hpo, std::string const& label) const;

private:
    std::vector<FindingId> at(std::string const& hpo) const;
    void add_features(nlohmann::json const& features, PhenopacketCase& result) const;
    void collect(PhenopacketCase& result) const;

    Ontology const& ontology_;
    HpoGraph const& hpo_;
    std::map<std::string, std::vector<FindingId>> by_hpo_;  ///< by the id in force
    std::map<std::string, std::set<FindingId>> below_;      ///< our findings below each term
};

}  // namespace asterism::testing
