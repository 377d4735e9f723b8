// SPDX-License-Identifier: MIT
// What would change the answer, in sentences; services that share a sentence are named together.
#include <algorithm>

#include <fmt/format.h>

#include "assess/changes.h"
#include "conditions/condition.h"
#include "render/assessment_view.h"
#include "render/assessment_words.h"

namespace asterism {

namespace {

constexpr std::size_t most_sets = 4;

std::string set_words(std::vector<Change> const& set) {
    std::vector<std::string> labels;
    for (auto const& change : set) labels.push_back(change.label);
    return list_in_words(labels, "and");
}

/// `x, or y and z`, with the number of sets that are not told.
std::string sets_words(std::vector<std::vector<Change>> const& sets, bool more) {
    std::string text;
    auto const shown = std::min(most_sets, sets.size());
    for (std::size_t i = 0; i < shown; ++i) text += (i ? ", or " : "") + set_words(sets[i]);
    if (sets.size() > shown)
        text += fmt::format(" (+{} more)", sets.size() - shown);
    else if (more)
        text += " (more may exist)";
    return text;
}

/// One rule that one thing reaches says nothing new: the reason has named that thing already.
bool goes_without_saying(Referral const& r) {
    auto const& sets = r.what_would_change.without;
    return r.reasons.size() == 1 && sets.size() == 1 && sets.front().size() == 1;
}

std::string removal_words(Referral const& r, bool complete) {
    auto const& w = r.what_would_change;
    if (w.without.empty() || (!complete && goes_without_saying(r))) return {};
    return "no longer suggested without " + sets_words(w.without, w.more_without);
}

std::string step_words(WhatWouldChange const& w, bool complete) {
    std::vector<std::string> labels;
    for (auto const& step : w.examine) labels.push_back(step.label);
    if (!labels.empty()) return "settled once these are normal: " + first_of(labels, 5);
    if (!complete || w.steps_to_complete == 0) return {};
    return fmt::format("settled by completing the examination: {}",
                       counted(static_cast<std::size_t>(w.steps_to_complete), "step", "steps"));
}

std::string addition_words(WhatWouldChange const& w, bool complete) {
    std::string text;
    if (!w.with.empty()) text = "suggested with " + sets_words(w.with, w.more_with);
    if (!complete || w.alone == 0) return text;
    return fmt::format(
        "{}{}{} would do it alone", text, text.empty() ? "" : "; ",
        counted(static_cast<std::size_t>(w.alone), "single finding", "single findings"));
}

std::string words(Referral const& r, bool complete) {
    auto const& w = r.what_would_change;
    switch (r.verdict) {
        case Verdict::suggested: return removal_words(r, complete);
        case Verdict::not_suggested: return addition_words(w, complete);
        case Verdict::unsettled: return step_words(w, complete);
    }
    return {};
}

/// `a, b, c and 4 others`.
std::string services(std::vector<std::string> labels) {
    constexpr std::size_t most = 3;
    if (labels.size() <= most + 1) return list_in_words(labels, "and");
    auto const others = labels.size() - most;
    labels.resize(most);
    return fmt::format("{} and {} others", fmt::join(labels, ", "), others);
}

}  // namespace

std::vector<std::string> change_sentences(Assessment const& a, bool complete) {
    std::vector<std::pair<std::string, std::vector<std::string>>> told;
    auto const told_of = complete ? ChangesTold::all : ChangesTold::in_brief;
    bool const any = !with_verdict(a, Verdict::suggested).empty();
    for (auto const verdict : {Verdict::suggested, Verdict::unsettled, Verdict::not_suggested}) {
        if (!is_told(told_of, verdict, any)) continue;
        for (auto const* r : with_verdict(a, verdict)) {
            auto const text = words(*r, complete);
            if (text.empty()) continue;
            auto const same = std::find_if(told.begin(), told.end(),
                                           [&](auto const& known) { return known.first == text; });
            if (same == told.end())
                told.push_back({text, {r->label}});
            else
                same->second.push_back(r->label);
        }
    }
    std::vector<std::string> sentences;
    for (auto const& [text, labels] : told)
        sentences.push_back(services(labels) + ": " + text + ".");
    return sentences;
}

}  // namespace asterism
