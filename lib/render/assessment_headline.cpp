// SPDX-License-Identifier: MIT
// The first line: what to do, how soon, and the essential step that is still open.
#include <algorithm>

#include <fmt/format.h>

#include "base/fold.h"
#include "render/assessment_view.h"
#include "render/assessment_words.h"

namespace asterism {

namespace {

struct UrgencyGroup {
    Urgency urgency;
    std::vector<std::string> labels;
};

std::vector<UrgencyGroup> by_urgency(Assessment const& a) {
    std::vector<UrgencyGroup> groups;
    for (auto const* referral : with_verdict(a, Verdict::suggested)) {
        if (groups.empty() || groups.back().urgency != *referral->urgency) {
            groups.push_back({*referral->urgency, {}});
        }
        groups.back().labels.push_back(referral->label);
    }
    return groups;
}

/// How a line opens with an urgency, at length and in short.
std::string_view opening(Urgency urgency, bool at_length) {
    switch (urgency) {
        case Urgency::emergency: return "CALL NOW";
        case Urgency::same_day: return at_length ? "Refer the same day" : "Same day";
        case Urgency::urgent: return at_length ? "Refer urgently (days to two weeks)" : "Urgent";
        case Urgency::routine: return at_length ? "Refer routinely" : "Routine";
    }
    return "";
}

std::string_view continuing(Urgency urgency) {
    switch (urgency) {
        case Urgency::emergency: return "call now";
        case Urgency::same_day: return "same day";
        case Urgency::urgent: return "urgent";
        case Urgency::routine: return "routine";
    }
    return "";
}

std::string all_services(std::vector<UrgencyGroup> const& groups, bool at_length) {
    std::string all;
    for (auto const& group : groups) {
        auto const how =
            all.empty() ? opening(group.urgency, at_length) : continuing(group.urgency);
        all += fmt::format("{}{}: {}", all.empty() ? "" : "; ", how, fmt::join(group.labels, ", "));
    }
    return all + ".";
}

/// The first services of the most urgent group, and how many there are besides.
std::string first_services(std::vector<UrgencyGroup> const& groups, std::size_t kept) {
    auto const& first = groups.front();
    auto const end = first.labels.begin() + static_cast<std::ptrdiff_t>(kept);
    std::size_t others = first.labels.size() - kept;
    for (auto group = groups.begin() + 1; group != groups.end(); ++group) {
        others += group->labels.size();
    }
    return fmt::format("{}: {}{}.", opening(first.urgency, false),
                       fmt::join(first.labels.begin(), end, ", "),
                       others ? fmt::format(" (+{} more)", others) : "");
}

std::vector<std::string> without_a_service(Assessment const& a) {
    if (with_verdict(a, Verdict::unsettled).empty()) return {"No referral suggested."};
    return {"No referral suggested so far; the examination is not complete.",
            "No referral suggested so far; not complete.", "No referral so far."};
}

/// From the fullest to the shortest way to say it.
std::vector<std::string> actions(Assessment const& a) {
    auto const groups = by_urgency(a);
    if (groups.empty()) return without_a_service(a);
    std::vector<std::string> result{all_services(groups, true), all_services(groups, false)};
    for (auto kept = groups.front().labels.size(); kept > 0; --kept) {
        result.push_back(first_services(groups, kept));
    }
    auto const total = with_verdict(a, Verdict::suggested).size();
    result.push_back(fmt::format("{}: {}.", opening(groups.front().urgency, false),
                                 counted(total, "service", "services")));
    return result;
}

std::vector<std::string> open_steps(Assessment const& a) {
    auto const steps = open_essentials(a);
    if (steps.empty()) return {""};
    auto const& label = steps.front()->label;
    auto const more = steps.size() - 1;
    auto const others = more ? fmt::format(" and {} more", more) : "";
    auto const plus = more ? fmt::format(" (+{})", more) : "";
    return {fmt::format(" Essential and not examined: {}{}.", label, others),
            fmt::format(" Not examined: {}{}.", label, plus),
            fmt::format(" Open: {}{}.", label, plus)};
}

}  // namespace

std::string full_headline(Assessment const& a) {
    return actions(a).front() + open_steps(a).front();
}

std::string headline(Assessment const& a, int width) {
    auto const opens = open_steps(a);
    for (auto const& action : actions(a)) {
        for (auto const& open : opens) {
            if (display_width(action + open) <= width) return action + open;
        }
    }
    return actions(a).back() + opens.back();
}

std::string services_by_urgency(Assessment const& a) {
    auto const text = services_with_urgency(with_verdict(a, Verdict::suggested));
    return text.empty() ? text : text + ".";
}

}  // namespace asterism
