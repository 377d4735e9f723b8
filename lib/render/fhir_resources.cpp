// SPDX-License-Identifier: MIT
#include "render/fhir_resources.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "base/digest.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

/// FHIR forbids texts that are empty or hold control characters other than line ends and tabs.
std::string fhir_text(std::string text) {
    std::erase_if(text, [](char c) {
        auto const byte = static_cast<unsigned char>(c);
        return byte < 0x20 && c != '\n' && c != '\t';
    });
    return text.empty() ? std::string("-") : text;
}

}  // namespace

std::string fhir_address(Assessment const& assessment, std::string const& role) {
    auto const name = assessment.case_id + "\n" + assessment.rulebook.digest + "\n" + role;
    auto hex = digest({make_source("", name)}).substr(0, 32);
    hex[12] = '8';  // a UUID of the free form (RFC 9562), variant 10
    hex[16] = 'a';
    return fmt::format("urn:uuid:{}-{}-{}-{}-{}", hex.substr(0, 8), hex.substr(8, 4),
                       hex.substr(12, 4), hex.substr(16, 4), hex.substr(20));
}

std::string fhir_priority(Urgency urgency) {
    switch (urgency) {
        case Urgency::emergency: return "stat";
        case Urgency::same_day: return "asap";
        case Urgency::urgent: return "urgent";
        case Urgency::routine: return "routine";
    }
    return "routine";
}

std::string rulebook_uri(Assessment const& assessment) {
    return fmt::format("urn:asterism:rulebook:{}:{}", assessment.rulebook.id,
                       assessment.rulebook.version);
}

std::string reason_line(Reason const& reason) {
    std::vector<std::string> seen;
    for (auto const& evidence : reason.evidence) {
        // Patterns and counts may carry the name of a condition; what was seen does not.
        bool const observed =
            evidence.kind == Evidence::Kind::finding || evidence.kind == Evidence::Kind::measure;
        if (observed && !evidence.label.empty()) seen.push_back(evidence.label);
    }
    auto text = reason.text;
    if (!seen.empty()) text += fmt::format(" Seen: {}.", fmt::join(seen, ", "));
    if (!reason.caution.empty()) text += " " + reason.caution;
    text += fmt::format(" (rule {}, {}", reason.rule, to_text(reason.strength));
    if (!reason.sources.empty()) text += fmt::format("; {}", fmt::join(reason.sources, ", "));
    return fhir_text(text + ")");
}

Json fhir_service_request(Assessment const& assessment, Referral const& referral,
                          Json const& subject, Json const& reason_references) {
    auto const label = fhir_text(referral.label);
    Json request{{"resourceType", "ServiceRequest"},
                 {"instantiatesUri", {rulebook_uri(assessment)}},
                 {"status", "draft"},
                 {"intent", "proposal"},
                 {"category", Json::array({Json{{"text", "suggested referral"}}})},
                 {"priority", fhir_priority(*referral.urgency)},
                 {"code", {{"text", "referral: " + label}}},
                 {"subject", subject},
                 {"performerType", {{"text", label}}}};
    for (auto const& reason : referral.reasons) {
        request["reasonCode"].push_back(Json{{"text", fhir_text(reason.text)}});
        request["note"].push_back(Json{{"text", reason_line(reason)}});
    }
    if (!reason_references.empty()) request["reasonReference"] = reason_references;
    request["note"].push_back(Json{{"text", usual_caution}});
    return request;
}

}  // namespace asterism
