// SPDX-License-Identifier: MIT
#include <algorithm>
#include <iterator>

#include <fmt/format.h>

#include "base/digest.h"
#include "ontology/checks.h"
#include "ontology/ontology.h"
#include "ontology/sections.h"
#include "yaml/read.h"

namespace asterism {

namespace {

template <class List, class T>
void move_into(List& target, std::vector<T>& part) {
    std::move(part.begin(), part.end(), std::back_inserter(target));
}

std::uint32_t next_norm(Ontology const& ontology) {
    return static_cast<std::uint32_t>(ontology.norm_names.printed().size());
}

void merge(Ontology& ontology, OntologySections& part, Diagnostics& diagnostics) {
    if (part.header && !ontology.header.id.empty()) {
        diagnostics.error("second-header", part.header->id.span, "a second `ontology` header");
    } else if (part.header) {
        ontology.header = std::move(*part.header);
    }
    move_into(ontology.regions, part.regions);
    move_into(ontology.steps, part.steps);
    move_into(ontology.findings, part.findings);
    move_into(ontology.measures, part.measures);
    move_into(ontology.citations, part.citations);
    move_into(ontology.prevalences, part.prevalences);
    for (auto const& norm : part.norms.items) {
        if (auto const* sources = norm.find("sources"))
            yaml::one_or_more(yaml::word("source"))
                .read(*sources, ontology.norm_sources, diagnostics);
    }
    for (auto const& norm : part.norms.items) {
        if (auto const* id = norm.find("norm"); id && id->is_scalar())
            ontology.norm_names.add(id->text, next_norm(ontology));
    }
    if (part.norms.is_list()) ontology.norms.push_back(std::move(part.norms));
}

/// False when the header may stand in the file, but could not be read: that is told already.
bool read_file(SourcePtr const& file, Ontology& ontology, Diagnostics& diagnostics) {
    if (file->name().ends_with(".csv")) return ontology.tables.push_back(file), true;
    auto const node = yaml::read_yaml(file, diagnostics);
    if (!node) return file->text().find("ontology:") == std::string_view::npos;
    OntologySections sections;
    ontology_file_table().read(*node, sections, diagnostics);
    bool const lost = node->find("ontology") && !sections.header;
    merge(ontology, sections, diagnostics);
    return !lost;
}

/// Fills an id map and a name index; an id that stands twice is reported at both places.
template <class List>
void index_ids(List const& things, std::string_view what, NameIndex& names,
               std::unordered_map<std::string, std::uint32_t>* by_id, Diagnostics& diagnostics) {
    for (std::uint32_t i = 0; i < things.size(); ++i) {
        auto const& id = things[i].id;
        if (id.empty()) continue;
        if (auto const first = names.exact(id.text); !first.empty()) {
            diagnostics.add({"duplicate-id",
                             Severity::error,
                             fmt::format("the {} `{}` is defined twice", what, id.text),
                             id.span,
                             {{things[first.front()].id.span, "first defined here"}},
                             {}});
            continue;
        }
        names.add(id.text, i);
        if (by_id) by_id->emplace(id.text, i);
    }
}

void index_all(Ontology& ontology, Diagnostics& diagnostics) {
    index_ids(ontology.regions, "region", ontology.region_names, nullptr, diagnostics);
    index_ids(ontology.steps, "exam step", ontology.step_names, &ontology.step_by_id, diagnostics);
    index_ids(ontology.findings, "finding", ontology.finding_names, &ontology.finding_by_id,
              diagnostics);
    index_ids(ontology.measures, "measure", ontology.measure_names, &ontology.measure_by_id,
              diagnostics);
    index_ids(ontology.citations, "source", ontology.citation_names, nullptr, diagnostics);
}

/// Links by id only: inside the ontology a label would be a second spelling of the same reference.
template <class Map>
bool link(Map const& by_id, NameIndex const& names, Word const& word, std::string_view what,
          std::uint32_t& target, Diagnostics& diagnostics) {
    if (word.empty()) return false;
    if (auto const found = by_id.find(word.text); found != by_id.end()) {
        target = found->second;
        return true;
    }
    report_unresolved(word, what, {{}, names.resolve(word.text).nearest}, {}, diagnostics);
    return false;
}

void link_steps(Ontology& ontology, Diagnostics& diagnostics) {
    for (auto& step : ontology.steps) {
        auto const label = [&](std::uint32_t id) { return ontology.regions[id].id.text; };
        if (step.region_name.empty()) continue;
        resolve_word(ontology.region_names, step.region_name, "region", label, step.region,
                     diagnostics);
    }
}

void link_findings(Ontology& ontology, Diagnostics& diagnostics) {
    for (FindingId id = 0; id < ontology.findings.size(); ++id) {
        auto& finding = ontology.findings[id];
        link(ontology.step_by_id, ontology.step_names, finding.step_name, "step", finding.step,
             diagnostics);
        FindingId parent = 0;
        if (link(ontology.finding_by_id, ontology.finding_names, finding.parent_name, "finding",
                 parent, diagnostics)) {
            finding.parent = parent;
        }
        if (finding.step < ontology.steps.size() && !ontology.regions.empty()) {
            auto const& step = ontology.steps[finding.step];
            finding.history = step.result || ontology.regions[step.region].history;
        }
    }
}

void link_measures(Ontology& ontology, Diagnostics& diagnostics) {
    for (auto& measure : ontology.measures) {
        link(ontology.step_by_id, ontology.step_names, measure.step_name, "step", measure.step,
             diagnostics);
        if (measure.units.empty()) measure.units.push_back(measure.unit);
        if (!measure.instrument && !measure.computed) {
            diagnostics.error("missing-key", measure.id.span,
                              "a measure needs `instrument` or `computed`");
        }
        if (!measure.computed) continue;
        auto& computed = *measure.computed;
        link(ontology.measure_by_id, ontology.measure_names, computed.first_name, "measure",
             computed.first, diagnostics);
        link(ontology.measure_by_id, ontology.measure_names, computed.second_name, "measure",
             computed.second, diagnostics);
    }
    for (auto& prevalence : ontology.prevalences) {
        link(ontology.finding_by_id, ontology.finding_names, prevalence.finding_name, "finding",
             prevalence.finding, diagnostics);
    }
}

/// Head to toe: findings and steps follow the order of regions, whatever file they came from.
void order_by_region(Ontology& ontology) {
    auto const rank = [&](Word const& region) {
        auto const found = ontology.region_names.exact(region.text);
        return found.empty() ? ontology.regions.size() : std::size_t{found.front()};
    };
    std::stable_sort(ontology.steps.begin(), ontology.steps.end(),
                     [&](ExamStep const& a, ExamStep const& b) {
                         return rank(a.region_name) < rank(b.region_name);
                     });
}

void order_by_step(Ontology& ontology) {
    auto const rank = [&](Finding const& finding) {
        auto const found = ontology.step_names.exact(finding.step_name.text);
        return found.empty() ? ontology.steps.size() : std::size_t{found.front()};
    };
    std::stable_sort(ontology.findings.begin(), ontology.findings.end(),
                     [&](Finding const& a, Finding const& b) { return rank(a) < rank(b); });
}

void put_in_order(Ontology& ontology) {
    NameIndex regions;
    for (std::uint32_t i = 0; i < ontology.regions.size(); ++i)
        regions.add(ontology.regions[i].id.text, i);
    ontology.region_names = std::move(regions);
    order_by_region(ontology);
    NameIndex steps;
    for (std::uint32_t i = 0; i < ontology.steps.size(); ++i)
        steps.add(ontology.steps[i].id.text, i);
    ontology.step_names = std::move(steps);
    order_by_step(ontology);
    ontology.region_names = {};
    ontology.step_names = {};
}

void add_names(Ontology& ontology) {
    for (FindingId id = 0; id < ontology.findings.size(); ++id) {
        auto const& finding = ontology.findings[id];
        ontology.finding_names.add(finding.label, id);
        for (auto const& name : finding.synonyms) ontology.finding_names.add(name.text, id);
        for (auto const& name : finding.ambiguous) ontology.finding_names.add(name.text, id);
        for (auto const& name : finding.outdated) ontology.finding_names.add(name.text, id, false);
        for (auto const& name : finding.hpo) ontology.finding_names.add(name.text, id, false);
        if (finding.parent) ontology.findings[*finding.parent].children.push_back(id);
    }
    for (StepId id = 0; id < ontology.steps.size(); ++id)
        ontology.step_names.add(ontology.steps[id].label, id);
    for (MeasureId id = 0; id < ontology.measures.size(); ++id) {
        auto const& measure = ontology.measures[id];
        ontology.measure_names.add(measure.label, id);
        for (auto const& name : measure.synonyms) ontology.measure_names.add(name.text, id);
        for (auto const& name : measure.ambiguous) ontology.measure_names.add(name.text, id);
    }
}

}  // namespace

std::optional<Ontology> load_ontology(std::vector<SourcePtr> const& files,
                                      Diagnostics& diagnostics) {
    Diagnostics problems;
    Ontology ontology;
    bool whole = true;
    for (auto const& file : files) whole = read_file(file, ontology, problems) && whole;
    if (whole && ontology.header.id.empty()) {
        problems.error("missing-header", files.empty() ? Span{} : Span{files.front(), 0, 1},
                       "no file has the `ontology` header");
    }
    put_in_order(ontology);
    index_all(ontology, problems);
    link_steps(ontology, problems);
    link_findings(ontology, problems);
    link_measures(ontology, problems);
    add_names(ontology);
    ontology.frame_findings();
    check_ontology(ontology, problems);
    ontology.digest = digest(files);
    diagnostics.append(problems);
    if (problems.has_errors()) return std::nullopt;
    return ontology;
}

}  // namespace asterism
