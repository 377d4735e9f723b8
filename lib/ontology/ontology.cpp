// SPDX-License-Identifier: MIT
#include "ontology/ontology.h"

namespace asterism {

namespace {

template <class Map>
std::optional<std::uint32_t> look_up(Map const& map, std::string_view id) {
    auto const found = map.find(std::string(id));
    return found == map.end() ? std::nullopt : std::optional(found->second);
}

template <class T, class Map>
void index(std::vector<T> const& things, Map& by_id) {
    by_id.reserve(things.size());
    for (std::uint32_t i = 0; i < things.size(); ++i) {
        if (!things[i].id.empty()) by_id.emplace(things[i].id.text, i);
    }
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

void Ontology::index_ids() {
    index(findings, finding_by_id);
    index(measures, measure_by_id);
    index(steps, step_by_id);
}

std::optional<FindingId> Ontology::finding(std::string_view id) const { return look_up(finding_by_id, id); }
std::optional<MeasureId> Ontology::measure(std::string_view id) const { return look_up(measure_by_id, id); }
std::optional<StepId> Ontology::step(std::string_view id) const { return look_up(step_by_id, id); }

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
    for (auto at = findings[id].parent; at; at = findings[*at].parent) result.push_back(*at);
    return result;
}

}  // namespace asterism
