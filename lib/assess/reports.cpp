// SPDX-License-Identifier: MIT
#include "assess/reports.h"

#include <algorithm>

#include <fmt/format.h>

#include "assess/measure_report.h"

namespace asterism {

namespace {

bool present(CompiledRulebook const& book, CaseFacts const& facts, FindingId id) {
    return value_of(book.present[id], facts.values) == Truth::yes;
}

ConstellationResult result_of(CompiledRulebook const& book, CaseFacts const& facts,
                              EvidenceReader const& reader,
                              CompiledConstellation const& constellation) {
    auto const& syntax = book.syntax(constellation);
    auto const& total = book.tallies[constellation.total];
    auto const bounds = sum(total.inputs, facts.values);
    ConstellationResult result;
    result.constellation = syntax.id.text;
    result.label = syntax.label;
    result.service = book.book->services[constellation.service].id.text;
    result.reached = reader.value(constellation.reached.literal);
    result.low = points_text(bounds.low);
    result.high = points_text(bounds.high);
    result.rule = constellation.reached->condition->describe(reader.vocabulary());
    result.note = syntax.note;
    result.strength = syntax.strength;
    Tenths possible = 0;
    for (auto const& item : total.items) {
        possible += item.points;
        result.items.push_back(
            {item.item.text, points_text(item.points), reader.value(item.when.literal)});
    }
    result.possible = points_text(possible);
    for (auto const& source : syntax.sources) result.sources.push_back(source.text);
    return result;
}

/// Why a minor variant that is present was not counted; empty when it was.
std::string why_not_counted(CompiledRulebook const& book, EvidenceReader const& reader,
                            CountedKey const& key, CountedMember const& member) {
    if (reader.finding(member.finding).familial) return "familial";
    if (reader.value(member.counts) == Truth::no) return {};
    if (key.covered && reader.value(*key.covered) == Truth::yes)
        return "in the field of a major anomaly that is counted";
    bool const another_first =
        &member !=
        &*std::find_if(key.members.begin(), key.members.end(), [&](CountedMember const& m) {
            return reader.value(m.counts) == Truth::yes;
        });
    if (!another_first) return {};
    return fmt::format("counts once with the other findings of {}",
                       book.book->keys[key.key].id.text);
}

}  // namespace

std::vector<TallyResult> tally_results(CompiledRulebook const& book, CaseFacts const& facts,
                                       EvidenceReader const& reader) {
    std::vector<TallyResult> results;
    for (auto const& tally : book.tallies) {
        if (tally.constellation) continue;
        Bounds const bounds{sum(tally.inputs, facts.counted).low,
                            sum(tally.inputs, facts.values).high};
        results.push_back({tally.id, tally.label, points_text(bounds.low), points_text(bounds.high),
                           reader.counted(tally)});
    }
    return results;
}

std::vector<ConstellationResult> constellation_results(CompiledRulebook const& book,
                                                       CaseFacts const& facts,
                                                       EvidenceReader const& reader) {
    std::vector<ConstellationResult> results;
    for (auto const& constellation : book.constellations) {
        if (sum(book.tallies[constellation.total].inputs, facts.values).low == 0) continue;
        results.push_back(result_of(book, facts, reader, constellation));
    }
    std::stable_partition(results.begin(), results.end(),
                          [](ConstellationResult const& r) { return r.reached == Truth::yes; });
    return results;
}

std::vector<SetAside> set_aside(CompiledRulebook const& book, CaseFacts const& facts,
                                EvidenceReader const& reader) {
    std::vector<SetAside> results;
    for (FindingId id = 0; id < book.classes.size(); ++id) {
        if (book.class_of(id) != FindingClass::normal_variant || !present(book, facts, id))
            continue;
        results.push_back(
            {book.ontology->at(id).id.text, book.ontology->at(id).label, "normal variant"});
    }
    for (auto const& tally : book.tallies) {
        if (tally.count != std::vector{FindingClass::minor_variant}) continue;
        for (auto const& key : tally.keys) {
            for (auto const& member : key.members) {
                if (!present(book, facts, member.finding)) continue;
                auto why = why_not_counted(book, reader, key, member);
                auto const& finding = book.ontology->at(member.finding);
                if (!why.empty())
                    results.push_back({finding.id.text, finding.label, std::move(why)});
            }
        }
    }
    return results;
}

std::vector<Evidence> finding_results(CompiledRulebook const& book, CaseFacts const& facts,
                                      EvidenceReader const& reader) {
    std::vector<Evidence> results;
    for (FindingId id = 0; id < book.present.size(); ++id) {
        auto const& state = facts.states[id];
        if (!state.statement && !present(book, facts, id)) continue;
        auto evidence = reader.finding(id);
        if (state.origin == Origin::unsure) evidence.how = "unsure";
        results.push_back(std::move(evidence));
    }
    return results;
}

std::vector<MeasureResult> measure_results(CompiledRulebook const& book, CaseFacts const& facts) {
    std::vector<MeasureResult> results;
    for (auto const& reading : facts.readings)
        results.push_back(measure_result(*book.ontology, reading));
    return results;
}

}  // namespace asterism
