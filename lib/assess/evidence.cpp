// SPDX-License-Identifier: MIT
#include "assess/evidence.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/number.h"

namespace asterism {

namespace {

std::string state_text(Truth value) {
    return value == Truth::yes ? "present" : value == Truth::no ? "absent" : "unknown";
}

std::string z_words(NumberBand z) {
    auto const low = fmt::format("{:+.2f}", z.low);
    auto const high = fmt::format("{:+.2f}", z.high);
    return low == high ? low : fmt::format("{} to {}", low, high);
}

void add_unique(std::vector<Evidence>& out, Evidence evidence) {
    bool const known = std::any_of(out.begin(), out.end(), [&](Evidence const& e) {
        return e.kind == evidence.kind && e.id == evidence.id && e.label == evidence.label &&
               e.threshold == evidence.threshold;
    });
    if (!known) out.push_back(std::move(evidence));
}

}  // namespace

std::string points_text(Tenths tenths) { return to_text(static_cast<double>(tenths) / 10); }

std::vector<Evidence> EvidenceReader::decisive(CompiledCondition const& condition) const {
    std::vector<Evidence> out;
    collect(condition, value(condition.literal) == Truth::yes, out);
    return out;
}

/// A group that holds is explained by the children that hold (or, where it negates, by those that
/// do not).
void EvidenceReader::collect(CompiledCondition const& condition, bool wanted,
                             std::vector<Evidence>& out) const {
    if (condition.children.empty()) return collect_leaf(condition, out);
    bool const wanted_child = condition.condition->negates() ? !wanted : wanted;
    for (auto const& child : condition.children) {
        if (value(child.literal) == truth(wanted_child)) collect(child, wanted_child, out);
    }
}

void EvidenceReader::collect_leaf(CompiledCondition const& condition,
                                  std::vector<Evidence>& out) const {
    auto const leaf_data = condition.condition->leaf();
    if (leaf_data.kind == Leaf::Kind::tally) {
        add_unique(out, tally(leaf_data));
        for (auto& counts : counted(book_.tallies[leaf_data.index]))
            add_unique(out, std::move(counts));
    } else if (leaf_data.kind == Leaf::Kind::constellation) {
        auto const& constellation = book_.constellations[leaf_data.index];
        add_unique(out, leaf(condition));
        for (auto& part : decisive(constellation.reached)) add_unique(out, std::move(part));
    } else if (leaf_data.kind == Leaf::Kind::finding && !leaf_data.wants_absent &&
               value(condition.literal) == Truth::yes) {
        for (auto const id : present_by(leaf_data.index)) {
            add_unique(out, finding(id));
            if (facts_.states[id].origin != Origin::stated_present) add_derivation(id, out);
        }
    } else {
        add_unique(out, leaf(condition));
    }
}

/// A finding that numbers decided is explained by the numbers.
void EvidenceReader::add_derivation(FindingId id, std::vector<Evidence>& out) const {
    auto const& derived = book_.derived[id];
    if (!derived || value(derived->when.literal) != Truth::yes) return;
    for (auto& part : decisive(derived->when)) {
        bool const holds = part.kind == Evidence::Kind::measure && part.state != to_text(Truth::no);
        if (holds) add_unique(out, std::move(part));
    }
}

std::vector<FindingId> EvidenceReader::present_by(FindingId id) const {
    std::vector<FindingId> result;
    for (auto const child : book_.ontology->at(id).children) {
        if (value(book_.present[child]) != Truth::yes) continue;
        auto const below = present_by(child);
        result.insert(result.end(), below.begin(), below.end());
    }
    bool const itself = facts_.states[id].origin == Origin::stated_present || result.empty();
    if (itself) result.insert(result.begin(), id);
    return result;
}

std::string EvidenceReader::how(FindingId id) const {
    auto const& state = facts_.states[id];
    if (state.origin == Origin::stated_present || state.origin == Origin::stated_absent)
        return "stated";
    if (value(book_.present[id]) == Truth::yes) {
        auto const& derived = book_.derived[id];
        return derived && value(derived->when.literal) == Truth::yes ? "derived" : "inherited";
    }
    return state.origin == Origin::implied_absent ? "implied" : "";
}

Evidence EvidenceReader::finding(FindingId id) const {
    auto const& finding = book_.ontology->at(id);
    auto const& state = facts_.states[id];
    Evidence evidence;
    evidence.id = finding.id.text;
    evidence.label = finding.label;
    evidence.state = state_text(value(book_.present[id]));
    evidence.how = how(id);
    evidence.familial = state.familial;
    evidence.finding_class = book_.class_of(id);
    evidence.side = to_text(state.present_sides);
    if (state.statement) {
        evidence.as_written = state.statement->as_written.text;
        if (state.statement->grade) evidence.grade = finding.grades[*state.statement->grade].text;
    }
    if (book_.classes[id] && book_.classes[id]->key)
        evidence.key = book_.book->keys[*book_.classes[id]->key].id.text;
    return evidence;
}

Evidence EvidenceReader::leaf(CompiledCondition const& condition) const {
    auto const data = condition.condition->leaf();
    if (data.kind == Leaf::Kind::finding) return finding(data.index);
    if (data.kind == Leaf::Kind::tally) return tally(data);
    if (data.kind == Leaf::Kind::measure) return measure(condition);
    Evidence evidence;
    evidence.kind = data.kind == Leaf::Kind::constellation ? Evidence::Kind::constellation
                                                           : Evidence::Kind::fact;
    if (data.kind == Leaf::Kind::constellation)
        evidence.id = book_.syntax(book_.constellations[data.index]).id.text;
    evidence.label = condition.condition->describe(vocabulary_);
    evidence.state = to_text(value(condition.literal));
    if (data.kind == Leaf::Kind::age && baby_.age) evidence.value = to_text(*baby_.age);
    if (data.kind == Leaf::Kind::gestation && baby_.gestation)
        evidence.value = to_text(*baby_.gestation);
    if (data.kind == Leaf::Kind::sex) evidence.value = to_text(baby_.sex);
    return evidence;
}

Evidence EvidenceReader::tally(Leaf const& leaf) const {
    auto const& tally = book_.tallies[leaf.index];
    Bounds const bounds{sum(tally.inputs, facts_.counted).low,
                        sum(tally.inputs, facts_.values).high};
    Evidence evidence;
    evidence.kind = Evidence::Kind::tally;
    evidence.id = tally.id;
    evidence.label = tally.label;
    evidence.value = points_text(bounds.low);
    if (bounds.high > bounds.low) evidence.value += " to " + points_text(bounds.high);
    evidence.threshold = (leaf.at_most ? "at most " : "at least ") + points_text(leaf.threshold);
    return evidence;
}

Evidence EvidenceReader::measure(CompiledCondition const& condition) const {
    auto const& measure = book_.ontology->measures[condition.condition->leaf().index];
    Evidence evidence;
    evidence.kind = Evidence::Kind::measure;
    evidence.id = measure.id.text;
    evidence.label = measure.label;
    evidence.threshold = condition.condition->describe(vocabulary_);
    for (auto const& reading : facts_.readings) {
        if (reading.measured.measure != condition.condition->leaf().index) continue;
        evidence.as_written = reading.measured.as_written.text;
        evidence.value = reading.measured.as_written.text;
        if (reading.z_as_read)
            evidence.value +=
                fmt::format(", z {} by {}", z_words(*reading.z_as_read), reading.norm);
    }
    evidence.state = to_text(value(condition.literal));
    return evidence;
}

std::vector<Evidence> EvidenceReader::counted(CompiledTally const& tally) const {
    std::vector<Evidence> result;
    for (auto const& key : tally.keys) {
        if (value_of(key.counts, facts_.counted) != Truth::yes) continue;
        for (auto const& member : key.members) {
            if (value_of(member.counts, facts_.counted) == Truth::yes)
                result.push_back(finding(member.finding));
        }
    }
    for (auto const& item : tally.items) {
        if (value(item.when.literal) != Truth::yes) continue;
        for (auto& part : decisive(item.when)) add_unique(result, std::move(part));
    }
    return result;
}

}  // namespace asterism
