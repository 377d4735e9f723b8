// SPDX-License-Identifier: MIT
#include "ontology/ontology.h"

namespace asterism {

namespace {

/// By the map where there is one, else by the names, of which ids are the first.
template <class Map, class List>
std::optional<std::uint32_t> look_up(Map const& map, NameIndex const& names, List const& things,
                                     std::string_view id) {
    if (auto const found = map.find(std::string(id)); found != map.end()) return found->second;
    if (!map.empty()) return std::nullopt;
    for (auto const target : names.exact(id)) {
        if (things[target].id.text == id) return target;
    }
    return std::nullopt;
}

}  // namespace

std::string_view to_text(Sex sex) {
    switch (sex) {
        case Sex::female: return "female";
        case Sex::male: return "male";
        case Sex::undetermined: return "undetermined";
        case Sex::not_given: return "not given";
    }
    return "not given";
}

void Ontology::frame_findings() {
    frames.clear();
    for (FindingId id = 0; id < findings.size(); ++id) {
        auto const& finding = std::as_const(findings)[id];
        frames.push_back({finding.step, finding.parent, finding.sex, finding.history});
    }
}

std::optional<FindingId> Ontology::finding(std::string_view id) const {
    return look_up(finding_by_id, finding_names, findings, id);
}
std::optional<MeasureId> Ontology::measure(std::string_view id) const {
    return look_up(measure_by_id, measure_names, measures, id);
}
std::optional<StepId> Ontology::step(std::string_view id) const {
    return look_up(step_by_id, step_names, steps, id);
}

std::vector<FindingId> Ontology::descendants(FindingId id) const {
    auto result = findings[id].children;
    for (std::size_t i = 0; i < result.size(); ++i) {
        auto const& below = findings[result[i]].children;
        result.insert(result.end(), below.begin(), below.end());
    }
    return result;
}

std::vector<FindingId> Ontology::ancestors(FindingId id) const {
    std::vector<FindingId> result;
    for (auto at = frames[id].parent; at; at = frames[*at].parent) result.push_back(*at);
    return result;
}

}  // namespace asterism
