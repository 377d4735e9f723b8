// SPDX-License-Identifier: MIT
#include "ontology/checks.h"

#include <algorithm>
#include <map>

#include <fmt/format.h>

#include "base/fold.h"
#include "base/quantity.h"

namespace asterism {

namespace {

void check_cycles(Ontology const& ontology, Diagnostics& diagnostics) {
    for (FindingId id = 0; id < ontology.findings.size(); ++id) {
        auto at = ontology.findings[id].parent;
        for (std::size_t steps = 0; at && *at != id && steps <= ontology.findings.size(); ++steps) {
            at = ontology.findings[*at].parent;
        }
        if (at && *at == id) {
            diagnostics.error(
                "is-a-cycle", ontology.findings[id].parent_name.span,
                fmt::format("`{}` is its own ancestor", ontology.findings[id].id.text));
        }
    }
}

/// One use of a name by a finding.
struct Use {
    FindingId finding;
    Span span;
    bool marked;  ///< listed under `ambiguous`
};

using Uses = std::map<std::string, std::vector<Use>>;

void note_use(Uses& uses, std::string const& name, Use use) {
    auto& list = uses[fold(name)];
    bool const known = std::any_of(list.begin(), list.end(),
                                   [&](Use const& u) { return u.finding == use.finding; });
    if (!known) list.push_back(std::move(use));
}

Uses names_of_findings(Ontology const& ontology) {
    Uses uses;
    for (FindingId id = 0; id < ontology.findings.size(); ++id) {
        auto const& finding = ontology.findings[id];
        note_use(uses, finding.id.text, {id, finding.id.span, false});
        note_use(uses, finding.label, {id, finding.id.span, false});
        for (auto const& name : finding.ambiguous) note_use(uses, name.text, {id, name.span, true});
        for (auto const& name : finding.synonyms) note_use(uses, name.text, {id, name.span, false});
        for (auto const& name : finding.outdated) note_use(uses, name.text, {id, name.span, false});
    }
    return uses;
}

void check_shared_names(Ontology const& ontology, Diagnostics& diagnostics) {
    for (auto const& [name, list] : names_of_findings(ontology)) {
        if (list.size() < 2) continue;
        for (auto const& use : list) {
            if (use.marked) continue;
            auto const& other = list.front().finding == use.finding ? list.back() : list.front();
            diagnostics.add(
                {"shared-name",
                 Severity::error,
                 fmt::format("the name `{}` of `{}` is also a name of `{}`", name,
                             ontology.at(use.finding).id.text, ontology.at(other.finding).id.text),
                 use.span,
                 {{other.span, "the other use"}},
                 "list it under `ambiguous` in both findings, or drop one"});
        }
    }
}

void check_sources(Ontology const& ontology, Diagnostics& diagnostics) {
    for (auto const& prevalence : ontology.prevalences) {
        for (auto const& source : prevalence.sources) {
            auto const resolution = ontology.citation_names.resolve(source.text);
            if (resolution.targets.empty())
                report_unresolved(source, "source", resolution, {}, diagnostics);
        }
    }
}

void check_units(Ontology const& ontology, Diagnostics& diagnostics) {
    for (auto const& measure : ontology.measures) {
        for (auto const& unit : measure.units) {
            if (!conversion(unit, measure.unit)) {
                diagnostics.error("unit-mismatch", measure.id.span,
                                  fmt::format("`{}` of `{}` does not convert to {}", unit,
                                              measure.id.text, measure.unit));
            }
        }
    }
}

}  // namespace

void check_ontology(Ontology const& ontology, Diagnostics& diagnostics) {
    check_cycles(ontology, diagnostics);
    check_shared_names(ontology, diagnostics);
    check_sources(ontology, diagnostics);
    check_units(ontology, diagnostics);
}

}  // namespace asterism
