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

}  // namespace

std::vector<AssessmentWriter> const& assessment_writers() {
    static std::vector<AssessmentWriter> const table{
        {"text", "for a terminal", true, text},
        {"json", "asterism.assessment/1", true, json},
        {"html", "one page, with pictures", true, html},
        {"markdown", "for notes", true, markdown},
        {"consult", "a referral note", false, consult},
        {"fhir", "FHIR R4 Bundle with draft ServiceRequests", false, fhir},
        {"cds-hooks", "CDS Hooks cards", false, cds_hooks},
    };
    return table;
}

AssessmentWriter const* assessment_writer(std::string_view name) {
    return entry_named(assessment_writers(), name);
}

}  // namespace asterism
