// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "render/handbook.h"

namespace asterism {

/// Numbers and anchors that the chapters share.
struct HandbookPlan {
    explicit HandbookPlan(CompiledRulebook const& book);

    CompiledRulebook const& book;
    Vocabulary vocabulary;
    std::vector<FindingId> findings;                        ///< head to toe
    std::map<FindingId, std::string> finding_numbers;       ///< `1`, `2` ...
    std::vector<RuleId> rules;                              ///< by service, most urgent first
    std::map<RuleId, std::string> rule_numbers;             ///< `R1`, `R2` ...
    std::map<FindingId, std::vector<RuleId>> rules_naming;  ///< whose conditions name the finding

    HandbookLink finding(FindingId id) const;
    HandbookLink rule(RuleId id) const;
    std::vector<HandbookLink> sources(std::vector<Word> const& list) const;
};

/// The condition as a clause: in one sentence while it is short, else in parts.
HandbookClause clause_of(Condition const& condition, Vocabulary const& vocabulary);

HandbookSection findings_chapter(HandbookPlan const& plan);
HandbookSection counting_chapter(HandbookPlan const& plan);
HandbookSection derived_chapter(HandbookPlan const& plan);
HandbookSection constellations_chapter(HandbookPlan const& plan);
HandbookSection rules_chapter(HandbookPlan const& plan);
HandbookSection promises_chapter(HandbookPlan const& plan);
HandbookSection sources_chapter(HandbookPlan const& plan);
HandbookSection changes_chapter(std::vector<ReleaseNotes> const& notes);
std::vector<std::pair<std::string, std::vector<HandbookLink>>> index_of(HandbookPlan const& plan);

/// The first letter large.
std::string capital(std::string text);

}  // namespace asterism
