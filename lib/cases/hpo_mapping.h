// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "cases/imported.h"

namespace asterism {

/// Leads HPO terms to findings. An observed term goes up its is-a chain to the nearest finding: who
/// has the kind has the thing. An excluded one never goes up: it meets its own findings or those
/// below it. Without HPO only ids as the ontology writes them map.
class HpoMapper {
public:
    explicit HpoMapper(ImportContext const& context);

    MappedTerm observed(Word const& id, std::string const& label) const;
    MappedTerm excluded(Word const& id, std::string const& label) const;

    /// The id under which a present finding can be written so that it reads back as itself; empty
    /// when there is none.
    std::string id_of_present(FindingId finding) const;
    /// The same for an absent one.
    std::string id_of_absent(FindingId finding) const;

private:
    std::string current(std::string const& id) const;
    std::vector<FindingId> at(std::string const& id) const;
    void take_exact(std::vector<FindingId> const& exact, MappedTerm& term) const;
    void climb(std::string const& id, MappedTerm& term) const;
    void note_below(std::string const& id, std::vector<FindingId> const& findings);

    Ontology const& ontology_;
    Hpo const* hpo_;
    std::map<std::string, std::vector<FindingId>> by_id_;  ///< by the id in force
    std::map<std::string, std::set<FindingId>> below_;     ///< our findings below each term
};

}  // namespace asterism
