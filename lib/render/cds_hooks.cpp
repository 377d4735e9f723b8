// SPDX-License-Identifier: MIT
#include "render/cds_hooks.h"

#include <fmt/format.h>

#include "render/assessment_view.h"
#include "render/fhir_resources.h"
#include "render/markdown.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t longest_summary = 139;  // the standard asks for under 140 characters

/// Cuts at a blank and between code points.
std::string short_summary(std::string const& text) {
    std::size_t characters = 0;
    std::size_t last_blank = 0;
    for (std::size_t at = 0; at < text.size(); ++at) {
        bool const starts = (static_cast<unsigned char>(text[at]) & 0xC0) != 0x80;
        if (starts && ++characters > longest_summary - 4)
            return text.substr(0, last_blank > 0 ? last_blank : at) + " ...";
        if (text[at] == ' ') last_blank = at;
    }
    return text;
}

std::string indicator(Urgency urgency) {
    if (urgency == Urgency::emergency || urgency == Urgency::same_day) return "critical";
    return urgency == Urgency::urgent ? "warning" : "info";
}

Json card(Assessment const& assessment, std::string const& summary, std::string const& level,
          std::string const& detail) {
    return {{"summary", short_summary(summary)},
            {"indicator", level},
            {"detail", detail + "\n" + usual_caution},
            {"source",
             {{"label", fmt::format("Asterism, rulebook {} {}", assessment.rulebook.id,
                                    assessment.rulebook.version)}}}};
}

/// `Patient/ID` where the case has a code; a host system knows its own patient otherwise.
Json subject_of(Case const& baby) {
    if (baby.id.empty()) return {{"display", "the newborn of this record"}};
    return {{"display", baby.id.text}};
}

Json suggestion(Assessment const& assessment, Referral const& referral, Case const& baby) {
    auto const label = "Draft a referral: " + referral.label;
    Json action{
        {"type", "create"},
        {"description", label},
        {"resource", fhir_service_request(assessment, referral, subject_of(baby), Json::array())}};
    return {{"label", label}, {"actions", Json::array({action})}};
}

std::string reasons(SuggestionGroup const& group) {
    std::string text;
    for (auto const* list : {&group.reasons, &group.repeated}) {
        for (auto const* reason : *list)
            text += fmt::format("- {}\n", markdown_safe(reason_line(*reason)));
    }
    return text;
}

Json card_of(Assessment const& assessment, SuggestionGroup const& group, Case const& baby) {
    auto result = card(assessment, heading_of(group), indicator(*group.referrals.front()->urgency),
                       reasons(group));
    for (auto const* referral : group.referrals)
        result["suggestions"].push_back(suggestion(assessment, *referral, baby));
    result["selectionBehavior"] = "any";
    return result;
}

std::string open_detail(Assessment const& assessment) {
    std::string text = markdown_safe(if_normal_sentence(assessment)) + "\n";
    for (auto const* step : open_essentials(assessment))
        text += fmt::format("- not examined: {}\n", markdown_safe(step->label));
    return text;
}

}  // namespace

Json cds_cards(Assessment const& assessment, Case const& baby) {
    Json cards = Json::array();
    for (auto const& group : suggestion_groups(assessment))
        cards.push_back(card_of(assessment, group, baby));
    if (cards.empty())
        cards.push_back(
            card(assessment, full_headline(assessment), "info", open_detail(assessment)));
    return {{"cards", std::move(cards)}};
}

}  // namespace asterism
