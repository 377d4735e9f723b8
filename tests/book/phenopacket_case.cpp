// SPDX-License-Identifier: MIT
#include "phenopacket_case.h"

#include <algorithm>
#include <cmath>
#include <set>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace asterism::testing {

namespace {

using nlohmann::json;

constexpr double days_a_year = 365.25;
constexpr double hours_a_day = 24;

/// A member that may be missing or null; protobuf's JSON leaves defaults out.
json const& member(json const& object, char const* key) {
    static json const nothing;
    if (!object.is_object()) return nothing;
    auto const found = object.find(key);
    return found == object.end() ? nothing : *found;
}

std::string text_of(json const& value) {
    return value.is_string() ? value.get<std::string>() : std::string();
}

std::optional<double> days_in(char unit) {
    switch (unit) {
        case 'Y': return days_a_year;
        case 'M': return days_a_year / 12;
        case 'W': return 7;
        case 'D': return 1;
        default: return std::nullopt;
    }
}

/// The one parent that all of them have; nothing when they differ or one has none.
std::optional<FindingId> common_parent(Ontology const& ontology,
                                       std::vector<FindingId> const& findings) {
    auto const parent = ontology.at(findings.front()).parent;
    bool const common = std::all_of(findings.begin(), findings.end(),
                                    [&](FindingId id) { return ontology.at(id).parent == parent; });
    return common ? parent : std::nullopt;
}

void add(std::set<FindingId>& set, std::vector<MappedTerm> const& terms) {
    for (auto const& term : terms) set.insert(term.findings.begin(), term.findings.end());
}

}  // namespace

std::optional<double> days_of(std::string const& iso8601) {
    if (iso8601.size() < 3 || iso8601.front() != 'P') return std::nullopt;
    double days = 0;
    std::string number;
    for (auto const c : iso8601.substr(1)) {
        if (c == 'T') break;
        if ((c >= '0' && c <= '9') || c == '.') {
            number += c;
            continue;
        }
        auto const unit = days_in(c);
        if (!unit || number.empty()) return std::nullopt;
        days += std::stod(number) * *unit;
        number.clear();
    }
    return days;
}

PhenopacketReader::PhenopacketReader(Ontology const& ontology, HpoGraph const& hpo)
    : ontology_(ontology), hpo_(hpo) {
    for (FindingId id = 0; id < ontology.findings.size(); ++id) {
        for (auto const& term : ontology.at(id).hpo) {
            by_hpo_[hpo.current(term.text)].push_back(id);
        }
    }
    by_hpo_.erase("");
    for (auto const& [hpo_id, findings] : by_hpo_) {
        for (auto const& level : hpo.above(hpo_id)) {
            for (auto const& ancestor : level) {
                auto& list = below_[ancestor];
                list.insert(findings.begin(), findings.end());
            }
        }
    }
}

std::vector<FindingId> PhenopacketReader::at(std::string const& hpo) const {
    auto const found = by_hpo_.find(hpo);
    return found == by_hpo_.end() ? std::vector<FindingId>() : found->second;
}

MappedTerm PhenopacketReader::observed(std::string const& hpo, std::string const& label) const {
    MappedTerm term{hpo, label, Mapping::nowhere, {}};
    auto const current = hpo_.current(hpo);
    if (current.empty()) return term;
    if (auto const exact = at(current); !exact.empty()) {
        auto const stand_in = common_parent(ontology_, exact);
        term.how = Mapping::exact;
        if (exact.size() == 1)
            term.findings = exact;
        else if (stand_in)
            term.findings = {*stand_in};
        else
            term.how = Mapping::shared_id;
        return term;
    }
    for (auto const& level : hpo_.above(current)) {
        for (auto const& ancestor : level) {
            auto const here = at(ancestor);
            if (here.size() == 1) term.findings.push_back(here.front());
        }
        if (term.findings.empty()) continue;
        term.how = Mapping::by_ancestor;
        break;
    }
    return term;
}

MappedTerm PhenopacketReader::excluded(std::string const& hpo, std::string const& label) const {
    MappedTerm term{hpo, label, Mapping::nowhere, {}};
    auto const current = hpo_.current(hpo);
    if (current.empty()) return term;
    term.findings = at(current);  // all of them: what is not there is no kind of it
    if (!term.findings.empty()) {
        term.how = Mapping::exact;
        return term;
    }
    auto const below = below_.find(current);
    if (below == below_.end()) return term;
    term.findings.assign(below->second.begin(), below->second.end());
    term.how = Mapping::from_above;
    return term;
}

void PhenopacketReader::add_features(json const& features, PhenopacketCase& result) const {
    for (auto const& feature : features) {
        auto const& type = member(feature, "type");
        auto const id = text_of(member(type, "id"));
        auto const label = text_of(member(type, "label"));
        auto const& no = member(feature, "excluded");
        if (no.is_boolean() && no.get<bool>())
            result.excluded.push_back(excluded(id, label));
        else
            result.observed.push_back(observed(id, label));
    }
}

/// A packet can exclude at one age what it shows at another, and it can exclude a kind whose
/// relative is there: what is present stands.
void PhenopacketReader::collect(PhenopacketCase& result) const {
    std::set<FindingId> present;
    add(present, result.observed);
    std::set<FindingId> present_or_above = present;
    for (auto const id : present) {
        auto const ancestors = ontology_.ancestors(id);
        present_or_above.insert(ancestors.begin(), ancestors.end());
    }
    std::set<FindingId> absent;
    add(absent, result.excluded);
    result.present.assign(present.begin(), present.end());
    for (auto const id : absent) {
        if (present_or_above.count(id) == 0)
            result.absent.push_back(id);
        else
            ++result.contradictions;
    }
}

PhenopacketCase PhenopacketReader::read(json const& packet) const {
    PhenopacketCase result;
    result.id = text_of(member(packet, "id"));
    auto const& subject = member(packet, "subject");
    auto const sex = text_of(member(subject, "sex"));
    if (sex == "FEMALE") result.sex = "female";
    if (sex == "MALE") result.sex = "male";
    auto const& last = member(subject, "timeAtLastEncounter");
    result.age_days = days_of(text_of(member(member(last, "age"), "iso8601duration")));
    result.before_birth = member(last, "gestationalAge").is_object();
    add_features(member(packet, "phenotypicFeatures"), result);
    collect(result);
    return result;
}

std::string PhenopacketCase::text(Ontology const& ontology) const {
    auto const names = [&](std::vector<FindingId> const& findings) {
        auto list = json::array();
        for (auto const finding : findings) list.push_back(ontology.at(finding).id.text);
        return list;
    };
    json baby{{"findings", names(present)}, {"absent", names(absent)}};
    if (!id.empty()) baby["case"] = id;
    if (!sex.empty()) baby["sex"] = sex;
    if (age_days) baby["age"] = fmt::format("{}h", std::lround(*age_days * hours_a_day));
    return baby.dump();
}

}  // namespace asterism::testing
