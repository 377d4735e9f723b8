// SPDX-License-Identifier: MIT
/// Whether findings are there: their own state, then derivation and inheritance.
#include "oracle/judge.h"
#include "oracle/kleene.h"

namespace asterism::oracle {

States::States(Tables const& tables, Case const& baby) : own(tables.findings.size()) {
    auto const name = [&](Statement const& statement) {
        return tables.ontology.findings[statement.finding].id.text;
    };
    for (auto const& statement : baby.present) said[name(statement)].present.push_back(&statement);
    for (auto const& statement : baby.absent) said[name(statement)].absent.push_back(&statement);
    for (auto const& statement : baby.unsure) said[name(statement)].unsure.push_back(&statement);
}

Judge::Judge(Tables const& tables, Case const& baby, Numbers const& numbers, States& states,
             Unrecorded unrecorded, Supposed supposed)
    : tables_(tables),
      baby_(baby),
      numbers_(numbers),
      states_(states),
      unrecorded_(unrecorded),
      supposed_(std::move(supposed)),
      present_(tables.findings.size()),
      derived_(tables.findings.size()) {}

Said const& Judge::said(std::string const& finding) const {
    static Said const nothing;
    auto const found = states_.said.find(finding);
    return found == states_.said.end() ? nothing : found->second;
}

/// Absent without a side, or on both.
bool Judge::wholly_absent(std::string const& finding) const {
    bool left = false;
    bool right = false;
    for (auto const* statement : said(finding).absent) {
        if (statement->sides == Sides::not_said || statement->sides == Sides::both) return true;
        left = left || statement->sides == Sides::left;
        right = right || statement->sides == Sides::right;
    }
    return left && right;
}

bool Judge::other_sex(Finding const& finding) const {
    if (finding.sex == Sex::female) return baby_.sex == Sex::male;
    if (finding.sex == Sex::male) return baby_.sex == Sex::female;
    return false;
}

/// The measures that a condition tests, and whether one of the tests of each can be made.
void Judge::note_comparable(yaml::Node const& condition,
                            std::map<std::string, bool>& measures) const {
    if (auto const* id = condition.find("measured")) {
        bool& comparable = measures[id->text];
        comparable = comparable || compare(condition).has_value();
    }
    for (auto const* group : {"all", "any", "none", "of"}) {
        auto const* list = condition.find(group);
        if (!list) continue;
        for (auto const& item : list->items) note_comparable(item, measures);
    }
}

bool Judge::decided_by_measure(FindingText const& finding) const {
    if (!finding.derivation) return false;
    std::map<std::string, bool> measures;
    note_comparable(finding.derivation->when, measures);
    for (auto const& [id, comparable] : measures) {
        if (!comparable) return false;
    }
    return !measures.empty();
}

Truth Judge::own(FindingText const& finding) {
    auto& known = states_.own[finding.number];
    if (!known) known = work_out_own(finding);
    return *known;
}

/// The lines of the header, one after the other.
Truth Judge::work_out_own(FindingText const& text) const {
    auto const& id = text.name();
    if (!said(id).present.empty()) return Truth::yes;
    if (wholly_absent(id)) return Truth::no;
    if (decided_by_measure(text)) return Truth::no;
    if (!said(id).unsure.empty()) return Truth::unknown;
    for (auto above = text.parent; !above.empty(); above = tables_.findings.at(above).parent) {
        if (wholly_absent(above)) return Truth::no;
    }
    if (other_sex(*text.finding)) return Truth::no;
    if (text.history && baby_.history_none) return Truth::no;
    if (baby_.step_done[text.step]) return Truth::no;
    return Truth::unknown;
}

/// The unknown as the asker sees it: what is told gates only rules that ask for it, what is
/// examined can be taken as normal.
Truth Judge::unknown_for(FindingText const& finding, Asker const& asker) const {
    if (!finding.told) return unrecorded_ == Unrecorded::is_normal ? Truth::no : Truth::unknown;
    if (!asker.essential) return Truth::no;
    for (auto const& word : *asker.essential) {
        if (word.text == finding.name()) return Truth::unknown;
    }
    return Truth::no;
}

Truth Judge::own_for(FindingText const& finding, Asker const& asker) {
    auto const state = own(finding);
    return state == Truth::unknown ? unknown_for(finding, asker) : state;
}

Truth Judge::derivation(FindingText const& finding) {
    if (!finding.derivation) return Truth::no;
    if (!derived_[finding.number])
        derived_[finding.number] = holds(finding.derivation->when, {nullptr, finding.name()});
    return *derived_[finding.number];
}

Truth Judge::present(std::string const& finding, Asker const& asker) {
    return present(tables_.findings.at(finding), asker);
}

Truth Judge::present(FindingText const& finding, Asker const& asker) {
    if (!supposed_.empty()) {
        auto const known = supposed_.find("present " + finding.name());
        if (known != supposed_.end()) return known->second;
    }
    bool const keep = asker.essential == nullptr || asker.essential->empty();
    if (keep && present_[finding.number]) return *present_[finding.number];
    auto value = either(own_for(finding, asker), derivation(finding));
    for (auto const* child : finding.children) value = either(value, present(*child, asker));
    if (keep) present_[finding.number] = value;
    return value;
}

}  // namespace asterism::oracle
