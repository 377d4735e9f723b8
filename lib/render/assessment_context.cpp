// SPDX-License-Identifier: MIT
#include "render/assessment_context.h"

#include "assess/growth_curves.h"
#include "render/growth_chart.h"

namespace asterism {

namespace {

std::vector<std::pair<std::string, std::string>> recorded(Case const& baby) {
    std::vector<std::pair<std::string, std::string>> rows;
    auto const add = [&](char const* name, std::string value) {
        rows.emplace_back(name, std::move(value));
    };
    if (!baby.id.text.empty()) add("case", baby.id.text);
    if (baby.sex != Sex::not_given) add("sex", std::string(to_text(baby.sex)));
    if (baby.gestation) add("gestation at birth", to_text(*baby.gestation));
    if (baby.born) add("born", to_text(*baby.born));
    if (baby.examined_on) add("examined on", to_text(*baby.examined_on));
    if (baby.age) add("age at the examination", to_text(*baby.age));
    return rows;
}

}  // namespace

AssessmentContext context_of(Case const& baby, Ontology const& ontology) {
    AssessmentContext context;
    context.recorded = recorded(baby);
    context.history_none = baby.history_none;
    for (auto const& region : ontology.regions) {
        context.region_labels.emplace(region.id.text, region.label);
        if (region.history) context.history_region = region.id.text;
    }
    for (FindingId id = 0; id < ontology.findings.size(); ++id) {
        context.region_of_finding.emplace(ontology.at(id).id.text, ontology.region_of(id).id.text);
    }
    return context;
}

std::vector<MeasureChart> charts_of(Case const& baby, Ontology const& ontology,
                                    norms::Standards const& standards) {
    std::vector<MeasureChart> charts;
    for (auto const& reading : read_margins(ontology, standards, baby)) {
        auto const chart = growth_chart(ontology, standards, baby, reading);
        if (!chart) continue;  // no curves for it: the table of measures still has its numbers
        charts.push_back({chart->title + ": " + chart->point_label, growth_chart_svg(*chart)});
    }
    return charts;
}

}  // namespace asterism
