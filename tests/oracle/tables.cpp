// SPDX-License-Identifier: MIT
#include "oracle/tables.h"

#include <algorithm>
#include <cmath>

#include "oracle/answer.h"

namespace asterism::oracle {

namespace {

ClassSet major_classes() { return {FindingClass::major_anomaly, FindingClass::red_flag}; }

void collect_below(FindingText const& finding, std::vector<FindingText const*>& below) {
    for (auto const* child : finding.children) {
        below.push_back(child);
        collect_below(*child, below);
    }
}

template <class List>
std::unordered_map<std::string, std::size_t> places(List const& list) {
    std::unordered_map<std::string, std::size_t> result;
    for (std::size_t i = 0; i < list.size(); ++i) result[list[i].id.text] = i;
    return result;
}

bool is_minor(Classification const& classed) {
    return classed.value == FindingClass::minor_variant;
}

PointsText points(ScoreItem const& item, Names const& names) {
    return {read_condition(item.when, names), std::llround(item.points * 10)};
}

bool covers(CountingKey const& major, std::string const& field) {
    if (major.id.text == field) return true;
    return std::any_of(major.covers.begin(), major.covers.end(),
                       [&](Word const& word) { return word.text == field; });
}

/// What a question about a key's count is called.
std::string question_of(std::vector<Member> const& members) {
    std::string text = "count of";
    for (auto const& member : members) {
        text += " " + member.finding->name();
        for (auto const* below : member.displaced_by) text += " unless " + below->name();
    }
    return text;
}

}  // namespace

Tables::Tables(Rulebook const& the_book, Ontology const& the_ontology)
    : book(the_book), ontology(the_ontology) {
    add_findings();
    add_classes();
    questions = findings.size();
    add_book();
}

FindingText& Tables::finding(std::string const& id) { return findings[finding_numbers_.at(id)]; }

Names Tables::names() {
    return {
        [this](std::string const& id) -> FindingText const& { return finding(id); },
        [this](std::string const& id) { return tally_numbers_.at(id); },
        [numbers = places(book.constellations)](std::string const& id) { return numbers.at(id); },
        ontology};
}

void Tables::add_findings() {
    auto const steps = places(ontology.steps);
    auto const regions = places(ontology.regions);
    finding_numbers_ = places(ontology.findings);
    for (auto const& finding : ontology.findings) {
        FindingText text;
        text.finding = &finding;
        text.number = findings.size();
        text.step = steps.at(finding.step_name.text);
        text.paired = finding.laterality == Laterality::paired;
        auto const& step = ontology.steps[text.step];
        text.history = ontology.regions[regions.at(step.region_name.text)].history;
        text.told = text.history || step.result;
        findings.push_back(std::move(text));
    }
    for (auto& text : findings) {
        if (text.finding->parent_name.empty()) continue;
        auto& parent = finding(text.finding->parent_name.text);
        text.parent = &parent;
        parent.children.push_back(&text);
    }
    for (auto& text : findings) collect_below(text, text.below);
}

void Tables::add_classes() {
    for (auto const& item : book.classes) {
        auto& text = finding(item.finding.text);
        text.classed = &item;
        text.red_flag = item.value == FindingClass::red_flag;
    }
}

void Tables::add_book() {
    auto const ids = tally_names(book);
    for (std::size_t i = 0; i < ids.size(); ++i) tally_numbers_[ids[i]] = i;
    auto const names = this->names();
    for (auto const& item : book.derived) {
        auto& text = finding(item.finding.text);
        text.derivation = read_condition(item.when, names);
        text.derived_by_measures = measure_tests(*text.derivation);
    }
    for (auto const& tally : book.tallies) tallies.push_back(tally_text(tally, names));
    for (auto const& constellation : book.constellations) add_constellation(constellation, names);
    for (auto const& rule : book.rules) add_rule(rule, names);
}

TallyText Tables::tally_text(TallySyntax const& syntax, Names const& names) {
    TallyText text;
    ClassSet counted;
    for (auto const value : syntax.count) counted.insert(value);
    if (!counted.empty()) text.keys = counted_keys(counted);
    for (auto const& item : syntax.score) text.items.push_back(points(item, names));
    return text;
}

void Tables::add_constellation(ConstellationSyntax const& constellation, Names const& names) {
    TallyText total;
    std::vector<TallyText> parts;
    for (auto const& group : constellation.groups) {
        TallyText part;
        for (auto const& item : group.items) part.items.push_back(points(item, names));
        total.items.insert(total.items.end(), part.items.begin(), part.items.end());
        if (!group.name.empty()) parts.push_back(std::move(part));
    }
    tallies.push_back(std::move(total));
    tallies.insert(tallies.end(), parts.begin(), parts.end());
    constellations.push_back(read_condition(constellation.reached, names));
}

void Tables::add_rule(Rule const& rule, Names const& names) {
    auto const services = places(book.services);
    RuleText text{read_condition(rule.when, names), {}, {}};
    for (auto const& word : rule.essential) text.essential.push_back(&names.finding(word.text));
    for (auto const& suggestion : rule.suggest)
        text.suggest.push_back({services.at(suggestion.service.text), suggestion.urgency});
    rules.push_back(std::move(text));
}

std::vector<CountedKeyText> Tables::counted_keys(ClassSet counted) {
    auto const& minors = members(counted, true);
    auto const& others = members(counted, false);
    members(major_classes(), false);  // what displaces these is asked of every count
    std::vector<CountedKeyText> keys;
    for (auto const& key : book.keys) {
        CountedKeyText text;
        if (auto const found = minors.find(key.id.text); found != minors.end()) {
            text.minors = &found->second;
            text.covering = covering(key.id.text);
        }
        if (auto const found = others.find(key.id.text); found != others.end())
            text.others = &found->second;
        if (text.minors || text.others) keys.push_back(std::move(text));
    }
    return keys;
}

std::vector<Members const*> Tables::covering(std::string const& field) {
    std::vector<Members const*> result;
    auto const& by_key = members(major_classes(), false);
    for (auto const& key : book.keys) {
        auto const found = by_key.find(key.id.text);
        if (found != by_key.end() && covers(key, field)) result.push_back(&found->second);
    }
    return result;
}

Member Tables::member(FindingText const& finding, ClassSet counted) const {
    Member member{&finding, is_minor(*finding.classed)};
    for (auto const* below : finding.below) {
        if (!below->classed) continue;
        bool const same_kind = is_minor(*below->classed) == member.minor;
        bool const same_key = below->classed->key.text == finding.classed->key.text;
        if (!counted.contains(below->classed->value) || !same_key || !same_kind) {
            member.displaced_by.push_back(below);
        } else if (member.minor) {
            member.displaced_by_if_familial.push_back(below);
        }
    }
    return member;
}

/// The members that a tally of these classes counts: the minor variants, or all others.
Tables::MembersByKey const& Tables::members(ClassSet counted, bool minor) {
    auto const [place, is_new] = members_.try_emplace({counted, minor});
    auto& by_key = place->second;
    if (!is_new) return by_key;
    for (auto const& finding : findings) {
        auto const* classed = finding.classed;
        if (!classed || classed->key.empty() || is_minor(*classed) != minor) continue;
        if (!counted.contains(classed->value)) continue;
        by_key[classed->key.text].list.push_back(member(finding, counted));
    }
    number_members(by_key);
    note_displaced(by_key);
    return by_key;
}

void Tables::number_members(MembersByKey& by_key) {
    for (auto& [key, members] : by_key) {
        members.number = member_lists++;
        bool const plain = members.list.size() == 1 && members.list[0].displaced_by.empty();
        if (plain) {
            members.question = members.list[0].finding->number;
            continue;
        }
        auto const [place, is_new] =
            question_numbers_.try_emplace(question_of(members.list), questions);
        if (is_new) ++questions;
        members.question = place->second;
    }
}

void Tables::note_displaced(MembersByKey const& by_key) {
    for (auto const& [key, members] : by_key) {
        for (auto const& member : members.list) {
            for (auto const* below : member.displaced_by) {
                std::pair const entry{member.finding, below};
                if (std::find(displaced.begin(), displaced.end(), entry) == displaced.end())
                    displaced.push_back(entry);
            }
        }
    }
}

}  // namespace asterism::oracle
