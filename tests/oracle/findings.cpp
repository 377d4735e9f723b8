// SPDX-License-Identifier: MIT
/// Whether findings are there: their own state, then derivation and inheritance.
#include <algorithm>

#include "oracle/judge.h"
#include "oracle/kleene.h"

namespace asterism::oracle {

namespace {

/// Absent without a side, or on both.
bool wholly(std::vector<Statement const*> const& absent) {
    bool left = false;
    bool right = false;
    for (auto const* statement : absent) {
        if (statement->sides == Sides::not_said || statement->sides == Sides::both) return true;
        left = left || statement->sides == Sides::left;
        right = right || statement->sides == Sides::right;
    }
    return left && right;
}

}  // namespace

States::States(Tables const& tables, Case const& baby)
    : own(tables.findings.size()), place_(tables.findings.size()), said_(1) {
    for (auto const& statement : baby.present) {
        auto& said = place_for(statement.finding);
        said.present.push_back(&statement);
        said.familial = said.familial || statement.familial;
    }
    for (auto const& statement : baby.absent)
        place_for(statement.finding).absent.push_back(&statement);
    for (auto const& statement : baby.unsure)
        place_for(statement.finding).unsure.push_back(&statement);
    for (auto& said : said_) said.wholly_absent = wholly(said.absent);
}

Said& States::place_for(FindingId finding) {
    auto& place = place_[finding];
    if (place == 0) {
        place = static_cast<std::uint16_t>(said_.size());
        said_.emplace_back();
    }
    return said_[place];
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
      derived_(tables.findings.size()),
      counted_(tables.member_lists),
      reached_(tables.constellations.size()),
      tally_(tables.tallies.size()) {}

bool Judge::other_sex(Finding const& finding) const {
    if (finding.sex == Sex::female) return baby_.sex == Sex::male;
    if (finding.sex == Sex::male) return baby_.sex == Sex::female;
    return false;
}

/// Whether one of the derivation's tests of a measure can be made.
bool Judge::comparable(FindingText const& finding, std::size_t measure) const {
    auto const& tests = finding.derived_by_measures;
    return std::any_of(tests.begin(), tests.end(), [&](ConditionText const* test) {
        return test->number == measure && compare(*test);
    });
}

bool Judge::decided_by_measure(FindingText const& finding) const {
    auto const& tests = finding.derived_by_measures;
    return !tests.empty() &&
           std::all_of(tests.begin(), tests.end(), [&](ConditionText const* test) {
               return comparable(finding, test->number);
           });
}

Truth Judge::own(FindingText const& finding) {
    auto& known = states_.own[finding.number];
    if (!known) known = work_out_own(finding);
    return *known;
}

/// The lines of the header, one after the other.
Truth Judge::work_out_own(FindingText const& text) const {
    auto const& statements = said(text);
    if (!statements.present.empty()) return Truth::yes;
    if (statements.wholly_absent) return Truth::no;
    if (decided_by_measure(text)) return Truth::no;
    if (!statements.unsure.empty()) return Truth::unknown;
    for (auto const* above = text.parent; above; above = above->parent) {
        if (said(*above).wholly_absent) return Truth::no;
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
    auto const& essential = *asker.essential;
    bool const asked = std::find(essential.begin(), essential.end(), &finding) != essential.end();
    return asked ? Truth::unknown : Truth::no;
}

Truth Judge::own_for(FindingText const& finding, Asker const& asker) {
    auto const state = own(finding);
    return state == Truth::unknown ? unknown_for(finding, asker) : state;
}

Truth Judge::derivation(FindingText const& finding) {
    if (!finding.derivation) return Truth::no;
    auto& known = derived_[finding.number];
    if (!known) known = holds(*finding.derivation, {nullptr, &finding});
    return *known;
}

Truth Judge::present(FindingText const& finding, Asker const& asker) {
    if (!supposed_.empty() && supposed_[finding.number]) return *supposed_[finding.number];
    bool const keep = asker.essential == nullptr || asker.essential->empty();
    if (keep && present_[finding.number]) return *present_[finding.number];
    auto value = either(own_for(finding, asker), derivation(finding));
    for (auto const* child : finding.children) {
        if (value == Truth::yes) break;
        value = either(value, present(*child, asker));
    }
    if (keep) present_[finding.number] = value;
    return value;
}

}  // namespace asterism::oracle
