// SPDX-License-Identifier: MIT
#include "render/assessment_writers.h"

#include <nlohmann/json.hpp>

#include "base/named.h"
#include "render/assessment_context.h"
#include "render/assessment_html.h"
#include "render/assessment_markdown.h"
#include "render/cds_hooks.h"
#include "render/consult.h"
#include "render/fhir_bundle.h"
#include "render/json.h"

namespace asterism {

namespace {

std::string text(AnswerView const& view) { return assessment_text(view.assessment, view.text); }

std::string json(AnswerView const& view) { return json_text(assessment_json(view.assessment)); }

std::string html(AnswerView const& view) {
    auto context = context_of(view.baby, *view.book.ontology);
    context.charts = charts_of(view.baby, *view.book.ontology, *view.book.standards);
    return assessment_html(view.assessment, context);
}

std::string markdown(AnswerView const& view) {
    return assessment_markdown(view.assessment, context_of(view.baby, *view.book.ontology));
}

std::string consult(AnswerView const& view) {
    return consult_note(view.assessment, context_of(view.baby, *view.book.ontology));
}

std::string fhir(AnswerView const& view) {
    return json_text(fhir_bundle(view.assessment, view.baby, *view.book.ontology));
}

std::string cds_hooks(AnswerView const& view) {
    return json_text(cds_cards(view.assessment, view.baby));
}

template <ChangesTold told>
ChangesTold always(TextOptions const&) {
    return told;
}

ChangesTold by_detail(TextOptions const& options) {
    return options.detail == Detail::full ? ChangesTold::all : ChangesTold::in_brief;
}

}  // namespace

std::vector<AssessmentWriter> const& assessment_writers() {
    constexpr auto none = always<ChangesTold::none>;
    constexpr auto brief = always<ChangesTold::in_brief>;
    constexpr auto all = always<ChangesTold::all>;
    static std::vector<AssessmentWriter> const table{
        {"text", "for a terminal", by_detail, text},
        {"json", "asterism.assessment/1", all, json},
        {"html", "one page, with pictures", all, html},
        {"markdown", "for notes", brief, markdown},
        {"consult", "a referral note", none, consult},
        {"fhir", "FHIR R4 Bundle with draft ServiceRequests", none, fhir},
        {"cds-hooks", "CDS Hooks cards", none, cds_hooks},
    };
    return table;
}

AssessmentWriter const* assessment_writer(std::string_view name) {
    return entry_named(assessment_writers(), name);
}

}  // namespace asterism
