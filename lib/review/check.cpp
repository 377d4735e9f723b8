// SPDX-License-Identifier: MIT
#include "review/check.h"

#include <algorithm>
#include <set>

#include <fmt/format.h>

#include "assess/facts.h"
#include "assess/verdicts.h"
#include "compile/checks.h"
#include "review/check_conditions.h"
#include "review/check_rules.h"
#include "review/check_soft.h"
#include "review/check_unreachable.h"
#include "review/check_unused.h"
#include "review/promise.h"

namespace asterism {

namespace {

Case only(CompiledRulebook const& book, FindingId finding, bool rest_examined) {
    Case baby;
    baby.step_done.assign(book.ontology->steps.size(), rest_examined);
    auto const& known = book.ontology->at(finding);
    baby.sex = rest_examined && known.sex != Sex::not_given ? known.sex : Sex::not_given;
    Statement statement;
    statement.finding = finding;
    statement.as_written = known.id;
    baby.present.push_back(statement);
    return baby;
}

bool any_suggested(CompiledRulebook const& book, Case const& baby, Rest rest) {
    auto const found = verdicts(book, evaluate(book, baby, rest).values);
    return std::any_of(found.begin(), found.end(),
                       [](ServiceVerdict const& v) { return v.verdict == Verdict::suggested; });
}

void check_red_flags(CompiledRulebook const& book, Diagnostics& diagnostics) {
    for (FindingId id = 0; id < book.classes.size(); ++id) {
        if (book.class_of(id) != FindingClass::red_flag) continue;
        auto const& syntax = book.book->classes[book.classes[id]->syntax];
        auto const complain = [&](std::string_view rest) {
            diagnostics.error(
                "silent-red-flag", syntax.finding.span,
                fmt::format("the red flag `{}`, alone with all else {}, suggests no service",
                            syntax.finding.text, rest),
                "give it a rule whose condition is its presence");
        };
        if (!any_suggested(book, only(book, id, false), Rest::unknown)) complain("unknown");
        if (!any_suggested(book, only(book, id, true), Rest::normal)) complain("normal");
    }
}

void add(std::set<std::string>& cited, std::vector<Word> const& sources) {
    for (auto const& source : sources) cited.insert(source.text);
}

std::set<std::string> cited_sources(CompiledRulebook const& book) {
    std::set<std::string> cited{"common-practice"};
    for (auto const& item : book.book->classes) add(cited, item.sources);
    for (auto const& item : book.book->derived) add(cited, item.sources);
    for (auto const& item : book.book->tallies) add(cited, item.sources);
    for (auto const& item : book.book->constellations) add(cited, item.sources);
    for (auto const& item : book.book->rules) add(cited, item.sources);
    for (auto const& item : book.book->promises) add(cited, item.sources);
    for (auto const& item : book.book->vignettes) add(cited, item.sources);
    for (auto const& item : book.ontology->prevalences) add(cited, item.sources);
    add(cited, book.ontology->norm_sources);
    return cited;
}

void check_citations(CompiledRulebook const& book, Diagnostics& diagnostics) {
    auto const cited = cited_sources(book);
    for (auto const& citation : book.ontology->citations) {
        if (cited.contains(citation.id.text)) continue;
        diagnostics.error("uncited-source", citation.id.span,
                          fmt::format("nothing cites the source `{}`", citation.id.text),
                          "cite it or remove it");
    }
}

void check_unclassed(CompiledRulebook const& book, Diagnostics& diagnostics) {
    for (FindingId id = 0; id < book.classes.size(); ++id) {
        auto const& finding = book.ontology->at(id);
        if (book.classes[id] || finding.history || !finding.children.empty()) continue;
        diagnostics.error("unclassed", finding.id.span,
                          fmt::format("the book gives `{}` no class", finding.id.text));
    }
}

/// The words of an expectation; a rule's id among them means that the vignette names the rule.
void collect_words(yaml::Node const& node, std::set<std::string>& words) {
    if (node.is_scalar()) words.insert(node.text);
    for (auto const& item : node.items) collect_words(item, words);
    for (auto const& entry : node.entries) collect_words(entry.value, words);
}

void check_rules_have_vignettes(CompiledRulebook const& book, Diagnostics& diagnostics) {
    std::set<std::string> named;
    for (auto const& vignette : book.book->vignettes) collect_words(vignette.expect, named);
    for (auto const& rule : book.book->rules) {
        if (named.contains(rule.id.text)) continue;
        diagnostics.error("no-vignette", rule.id.span,
                          fmt::format("no vignette expects the rule `{}`", rule.id.text));
    }
}

}  // namespace

BookCounts count_book(CompiledRulebook const& book) {
    return {book.ontology->findings.size(),   book.ontology->steps.size(),
            book.book->classes.size(),        book.book->rules.size(),
            book.book->constellations.size(), book.book->vignettes.size(),
            book.ontology->citations.size()};
}

void check_book(CompiledRulebook const& book, Diagnostics& diagnostics) {
    check_red_flags(book, diagnostics);
    check_citations(book, diagnostics);
    check_unclassed(book, diagnostics);
    check_rules_have_vignettes(book, diagnostics);
    check_soft_measures(book, diagnostics);
    check_derivations(book, diagnostics);
    check_rules(book, diagnostics);
    check_unused(book, diagnostics);
    check_unreachable(book, diagnostics);
    check_conditions(book, diagnostics);
    compile_promises(book, diagnostics);
}

}  // namespace asterism
