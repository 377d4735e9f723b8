// SPDX-License-Identifier: MIT
#include "render/worksheet.h"

#include <fmt/format.h>

#include "render/assessment_text.h"
#include "render/layout.h"

namespace asterism {

namespace {

std::string findings_of(Ontology const& ontology, StepId step) {
    std::string list;
    for (auto const& finding : ontology.findings) {
        if (finding.step == step) list += (list.empty() ? "" : ", ") + finding.label;
    }
    return list;
}

std::string region_text(Ontology const& ontology, RegionId region) {
    std::string out = fmt::format("\n  # {}\n", ontology.regions[region].label);
    for (StepId id = 0; id < ontology.steps.size(); ++id) {
        auto const& step = ontology.steps[id];
        if (step.region != region) continue;
        out += wrapped(step.label + ": " + step.how, step.essential ? "  #   ESSENTIAL " : "  #   ", "  #     ", 100);
        out += wrapped(findings_of(ontology, id), "  #     look for: ", "  #       ", 100);
        out += fmt::format("  # - {}\n", step.id.text);
    }
    return out;
}

}  // namespace

std::string worksheet_yaml(Ontology const& ontology) {
    std::string out =
        "# One newborn, head to toe. Take the `#` away from each step that was done and list what was found;\n"
        "# a finding that is not listed under a step that was done reads as absent.\n" +
        wrapped(safety_text(), "# ", "# ", 100) +
        "case: worksheet\n"
        "# sex: female            # female, male or undetermined\n"
        "# gestation: 38w4d       # weeks and days\n"
        "# age: 26h\n"
        "findings: []             # [ low-set ears, { finding: single transverse palmar crease, side: right } ]\n"
        "absent: []\n"
        "unsure: []\n"
        "measures: {}             # { head-circumference: 34.5 cm }\n"
        "# history: none          # or a list of history items\n"
        "examined:\n"
        "  - none\n";
    for (RegionId region = 0; region < ontology.regions.size(); ++region) {
        if (!ontology.regions[region].history) out += region_text(ontology, region);
    }
    return out;
}

}  // namespace asterism
