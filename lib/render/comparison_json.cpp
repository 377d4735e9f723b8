// SPDX-License-Identifier: MIT
#include <nlohmann/json.hpp>

#include "render/comparison.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

Json book_json(BookIdentity const& book) {
    return {{"id", book.id},
            {"version", book.version},
            {"effective", book.effective},
            {"sha256", book.digest}};
}

Json text_or_null(std::string const& text) { return text.empty() ? Json() : Json(text); }

Json difference_json(Difference const& d) {
    return {{"part", d.part},
            {"id", d.id},
            {"label", text_or_null(d.label)},
            {"aspect", text_or_null(d.aspect)},
            {"before", text_or_null(d.before)},
            {"after", text_or_null(d.after)},
            {"place", d.place}};
}

Json answer_json(ServiceAnswer const& answer) {
    return {{"verdict", to_text(answer.verdict)},
            {"urgency", answer.urgency ? Json(to_text(*answer.urgency)) : Json()},
            {"rules", answer.rules}};
}

Json baby_json(BabyChange const& baby) {
    Json changes = Json::array();
    for (auto const& c : baby.changes) {
        changes.push_back({{"service", c.service},
                           {"change", to_text(c.kind)},
                           {"by", c.by()},
                           {"before", answer_json(c.before)},
                           {"after", answer_json(c.after)}});
    }
    return {{"case", baby.baby},
            {"story", text_or_null(baby.story)},
            {"findings", baby.findings},
            {"changes", std::move(changes)}};
}

std::string_view origin_text(CaseSet::Origin origin) {
    switch (origin) {
        case CaseSet::Origin::files: return "files";
        case CaseSet::Origin::vignettes: return "vignettes";
        case CaseSet::Origin::newborns: return "newborns";
    }
    return "";
}

Json set_json(CaseSetComparison const& set) {
    Json counts = Json::array(), changed = Json::array();
    for (auto const& count : set.counts) {
        counts.push_back({{"service", count.service},
                          {"change", to_text(count.kind)},
                          {"by", count.by},
                          {"babies", count.babies}});
    }
    for (auto const& baby : set.changed) changed.push_back(baby_json(baby));
    return {{"cases", origin_text(set.origin)},
            {"title", set.title},
            {"babies", set.babies},
            {"counts", std::move(counts)},
            {"changed", std::move(changed)}};
}

}  // namespace

nlohmann::ordered_json comparison_json(BookComparison const& c) {
    Json differences = Json::array(), sets = Json::array();
    for (auto const& d : c.differences) differences.push_back(difference_json(d));
    for (auto const& set : c.sets) sets.push_back(set_json(set));
    return {{"schema", comparison_schema},
            {"before", book_json(c.before)},
            {"after", book_json(c.after)},
            {"ontology", {{"version", c.ontology_version}, {"sha256", c.ontology_digest}}},
            {"any_change", c.any_change()},
            {"differences", std::move(differences)},
            {"judged", std::move(sets)}};
}

}  // namespace asterism
