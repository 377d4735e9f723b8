// SPDX-License-Identifier: MIT
#include "render/assessment_html_map.h"

#include <algorithm>

#include <fmt/format.h>

#include "render/assessment_words.h"

namespace asterism {

namespace {

std::string region_of(Evidence const& finding, AssessmentContext const& context) {
    auto const found = context.region_of_finding.find(finding.id);
    return found == context.region_of_finding.end() ? std::string() : found->second;
}

std::string label_of(std::string const& region, AssessmentContext const& context) {
    auto const found = context.region_labels.find(region);
    return found == context.region_labels.end() ? "elsewhere" : found->second;
}

Mark mark_of(Evidence const& finding) {
    if (!finding.finding_class) return Mark::normal;
    switch (*finding.finding_class) {
        case FindingClass::normal_variant: return Mark::normal;
        case FindingClass::minor_variant: return Mark::minor;
        case FindingClass::major_anomaly: return Mark::major;
        case FindingClass::red_flag: return Mark::red_flag;
    }
    return Mark::normal;
}

}  // namespace

std::vector<FoundInRegion> found_by_region(Assessment const& a, AssessmentContext const& context) {
    std::vector<FoundInRegion> result;
    int next = 1;
    for (auto const& finding : a.findings) {
        if (finding.state != "present") continue;
        auto const region = region_of(finding, context);
        auto known = std::find_if(result.begin(), result.end(),
                                  [&](FoundInRegion const& f) { return f.region == region; });
        if (known == result.end()) {
            int const number = has_place_on_map(region) ? next++ : 0;
            known = result.insert(result.end(), {region, label_of(region, context), number, {}});
        }
        known->findings.push_back(&finding);
    }
    return result;
}

std::vector<MapRegion> marked_regions(Assessment const& a, AssessmentContext const& context) {
    std::vector<MapRegion> regions;
    for (auto const& [id, label] : context.region_labels) {
        bool const open = std::any_of(a.not_examined.steps.begin(), a.not_examined.steps.end(),
                                      [&](StepToDo const& s) { return s.region == label; });
        regions.push_back({id, open ? Mark::not_examined : Mark::none, 0});
    }
    for (auto const& found : found_by_region(a, context)) {
        for (auto& region : regions) {
            if (region.region != found.region) continue;
            region.number = found.number;
            for (auto const* finding : found.findings) {
                region.mark = std::max(region.mark, mark_of(*finding));
            }
        }
    }
    return regions;
}

std::string map_description(std::vector<FoundInRegion> const& found) {
    std::string text = "Outline of a newborn from the front and from the back.";
    for (auto const& region : found) {
        if (region.number == 0) continue;
        text += fmt::format(" {}: {}, {}.", region.number, region.label,
                            counted(region.findings.size(), "finding", "findings"));
    }
    return text;
}

}  // namespace asterism
