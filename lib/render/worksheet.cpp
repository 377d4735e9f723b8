// SPDX-License-Identifier: MIT
#include "render/worksheet.h"

#include <fmt/format.h>

#include "render/assessment_words.h"
#include "render/layout.h"

namespace asterism {

namespace {

constexpr int sheet_width = 95;  ///< columns that fit a sheet of A4 in a 10-point typewriter face

std::string findings_of(Ontology const& ontology, StepId step) {
    std::string list;
    for (auto const& finding : ontology.findings) {
        if (finding.step == step) list += (list.empty() ? "" : ", ") + finding.label;
    }
    return list;
}

std::string step_text(Ontology const& ontology, StepId id, bool findings) {
    auto const& step = ontology.steps[id];
    auto out = fmt::format("  # - {:<26} # {}{}\n", step.id.text,
                           step.essential ? "ESSENTIAL: " : "", step.label);
    if (!findings) return out;
    out += wrapped(step.how, "  #     how: ", "  #       ", sheet_width);
    out += wrapped(findings_of(ontology, id), "  #     look for: ", "  #       ", sheet_width);
    return out;
}

std::string region_text(Ontology const& ontology, RegionId region, bool findings) {
    auto out = fmt::format("  # {}\n", ontology.regions[region].label);
    for (StepId id = 0; id < ontology.steps.size(); ++id) {
        if (ontology.steps[id].region == region && !ontology.steps[id].result) {
            out += step_text(ontology, id, findings);
        }
    }
    return out;
}

}  // namespace

std::string worksheet_yaml(Ontology const& ontology, bool findings) {
    std::string out =
        "# One newborn, head to toe. Take the `# ` away before the `-` of each step that was done, "
        "and\n"
        "# list what was found; a finding not listed under a step that was done reads as "
        "absent.\n" +
        wrapped(safety_text(), "# ", "# ", sheet_width) +
        "case: worksheet\n"
        "# sex: female            # female, male or undetermined\n"
        "# gestation: 38w4d       # weeks and days\n"
        "# age: 26h\n"
        "findings: []             # [ low-set ears, { finding: white pupil, side: right } ]\n"
        "absent: []               # looked for on purpose and not there\n"
        "unsure: []               # counts as not examined\n"
        "measures: {}             # { head-circumference: 34.5 cm }\n"
        "# history: none          # or a list of history items\n"
        "examined:\n"
        "  - none\n";
    for (RegionId region = 0; region < ontology.regions.size(); ++region) {
        if (!ontology.regions[region].history) out += region_text(ontology, region, findings);
    }
    return out;
}

}  // namespace asterism
