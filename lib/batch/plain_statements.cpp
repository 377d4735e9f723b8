// SPDX-License-Identifier: MIT
#include "batch/plain_statements.h"

namespace asterism::batch {

PlainStatements::PlainStatements(Ontology const& ontology) : stated_(ontology.findings.size(), 0) {
    for (FindingId id = 0; id < ontology.findings.size(); ++id) {
        parents_.push_back(ontology.at(id).parent.value_or(none));
        told_.push_back(ontology.region_of(id).history);
    }
}

bool PlainStatements::plain(FastCase const& baby) {
    bool fine = each_once(baby);
    for (auto const& s : baby.statements) {
        if (s.stated != Stated::present) continue;
        bool const told = baby.history_none && told_[s.finding];
        fine = fine && !told && !below_absent(s.finding);
    }
    for (auto const& s : baby.statements) stated_[s.finding] = 0;
    return fine;
}

bool PlainStatements::each_once(FastCase const& baby) {
    bool fine = true;
    for (auto const& s : baby.statements) {
        fine = fine && stated_[s.finding] == 0;
        stated_[s.finding] = static_cast<std::uint8_t>(s.stated);
    }
    return fine;
}

bool PlainStatements::below_absent(FindingId finding) const {
    for (auto above = parents_[finding]; above != none; above = parents_[above]) {
        if (stated_[above] == static_cast<std::uint8_t>(Stated::absent)) return true;
    }
    return false;
}

}  // namespace asterism::batch
