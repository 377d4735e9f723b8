// SPDX-License-Identifier: MIT
#include "compile/checks.h"

#include <fmt/format.h>

#include "compile/names.h"

namespace asterism {

namespace {

void check_sources(std::vector<Word> const& sources, Ontology const& ontology,
                   Diagnostics& diagnostics) {
    for (auto const& source : sources) {
        std::uint32_t ignored = 0;
        look_up(ontology.citation_names, source, "source", ignored, diagnostics);
    }
}

Classification const& written(CompiledRulebook const& book, FindingId finding) {
    return book.book->classes[book.classes[finding]->syntax];
}

void check_alone(CompiledRulebook const& book, FindingId finding, Diagnostics& diagnostics) {
    auto const& classed = *book.classes[finding];
    auto const& syntax = written(book, finding);
    bool const counts = classed.value == FindingClass::minor_variant ||
                        classed.value == FindingClass::major_anomaly;
    if (counts && !classed.key) {
        diagnostics.error(
            "missing-key", syntax.finding.span,
            fmt::format("`{}` is counted but has no counting key", syntax.finding.text));
    }
    if (book.ontology->region_of(finding).history) {
        diagnostics.error(
            "history-class", syntax.finding.span,
            fmt::format("`{}` is a history item and has no class", syntax.finding.text));
    }
}

void check_against_ancestor(CompiledRulebook const& book, FindingId finding, FindingId ancestor,
                            Diagnostics& diagnostics) {
    auto const& below = *book.classes[finding];
    auto const& above = *book.classes[ancestor];
    auto const& syntax = written(book, finding);
    Related const other{written(book, ancestor).finding.span, "the ancestor is classed here"};
    if (below.value < above.value) {
        diagnostics.add(
            {"milder-child",
             Severity::error,
             fmt::format("`{}` is classed {}, milder than its ancestor `{}` ({})",
                         syntax.finding.text, to_text(below.value),
                         other.span.known() ? written(book, ancestor).finding.text : "",
                         to_text(above.value)),
             syntax.finding.span,
             {other},
             "a benign look-alike is a sibling of the worrying finding, not its child"});
    }
    if (below.key && above.key && below.key != above.key) {
        diagnostics.add({"two-keys",
                         Severity::error,
                         fmt::format("`{}` and its ancestor `{}` have different counting keys",
                                     syntax.finding.text, written(book, ancestor).finding.text),
                         syntax.key.span,
                         {other},
                         {}});
    }
}

void check_negated_measures(Condition const& condition, bool negated, Diagnostics& diagnostics) {
    if (negated && condition.leaf().kind == Leaf::Kind::measure) {
        diagnostics.warning(
            "measure-under-none", condition.span(),
            "a measure under `none` of a derived finding: a number not taken counts as met here",
            "write the range that is wanted itself, such as `at-least: 90, below: 95`");
    }
    bool const inside = negated != condition.negates();
    for (auto const& child : condition.children())
        check_negated_measures(*child, inside, diagnostics);
}

}  // namespace

void check_references(Rulebook const& book, Ontology const& ontology, Diagnostics& diagnostics) {
    for (auto const& classed : book.classes) check_sources(classed.sources, ontology, diagnostics);
    for (auto const& derivation : book.derived)
        check_sources(derivation.sources, ontology, diagnostics);
    for (auto const& constellation : book.constellations)
        check_sources(constellation.sources, ontology, diagnostics);
    for (auto const& rule : book.rules) check_sources(rule.sources, ontology, diagnostics);
    for (auto const& vignette : book.vignettes)
        check_sources(vignette.sources, ontology, diagnostics);
    Diagnostics duplicates;  // reported when the names were first indexed
    auto const names = index_names(book, duplicates);
    for (auto const& key : book.keys) {
        std::uint32_t ignored = 0;
        for (auto const& covered : key.covers)
            look_up(names.keys, covered, "key", ignored, diagnostics);
    }
}

void check_classes(CompiledRulebook const& book, Diagnostics& diagnostics) {
    for (FindingId finding = 0; finding < book.classes.size(); ++finding) {
        if (!book.classes[finding]) continue;
        check_alone(book, finding, diagnostics);
        for (auto const ancestor : book.ontology->ancestors(finding)) {
            if (book.classes[ancestor])
                check_against_ancestor(book, finding, ancestor, diagnostics);
        }
    }
}

void check_derivations(CompiledRulebook const& book, Diagnostics& diagnostics) {
    for (auto const& derivation : book.derived) {
        if (derivation && derivation->when->condition)
            check_negated_measures(*derivation->when->condition, false, diagnostics);
    }
}

}  // namespace asterism
