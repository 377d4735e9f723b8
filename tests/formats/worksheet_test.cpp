// SPDX-License-Identifier: MIT
// The sheet for the bedside: every step is on it, essential ones are marked, and it reads back.
#include "render/worksheet.h"

#include <algorithm>
#include <regex>

#include "format_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

bool at_the_bedside(Ontology const& ontology, ExamStep const& step) {
    return !step.result && !ontology.regions[step.region].history;
}

/// As a person fills it in: the `# ` before each `-` taken away.
std::string ticked(std::string const& sheet) {
    auto const text = std::regex_replace(sheet, std::regex("\n  # - ([a-z-]+)"), "\n  - $1");
    return std::regex_replace(text, std::regex("\n  - none"), "");
}

}  // namespace

TEST_CASE("an untouched sheet is a case of which nothing was examined") {
    for (bool const findings : {false, true}) {
        auto const& book = shipped_book();
        auto const baby = judged(book, worksheet_yaml(*book.ontology, findings));
        CHECK(baby.baby.nothing_examined());
        CHECK_FALSE(baby.assessment.urgency);
    }
}

TEST_CASE("a sheet with every step ticked is a case with every bedside step done") {
    auto const& ontology = *shipped_book().ontology;
    auto const& done =
        judged(shipped_book(), ticked(worksheet_yaml(ontology, false))).baby.step_done;
    std::size_t steps = 0;
    for (StepId id = 0; id < ontology.steps.size(); ++id) {
        if (!at_the_bedside(ontology, ontology.steps[id])) continue;
        INFO(ontology.steps[id].id.text);
        CHECK(done[id]);
        ++steps;
    }
    CHECK(steps > 50);
}

TEST_CASE("one line a step, essential ones marked, no wider than a sheet of paper") {
    auto const& ontology = *shipped_book().ontology;
    auto const sheet = worksheet_yaml(ontology, false);
    auto const page = worksheet_html(ontology);
    for (auto const& line : lines_of(sheet)) CHECK(line.size() <= 95);
    for (auto const& step : ontology.steps) {
        if (!at_the_bedside(ontology, step)) continue;
        auto const mark = step.essential ? "# ESSENTIAL: " : "# ";
        CHECK(sheet.find(mark + step.label + "\n") != std::string::npos);
        CHECK(page.find((step.essential ? ">! " : ">") + step.label + "<") != std::string::npos);
    }
}

TEST_CASE("the full sheet has instruction and findings, the short one does not") {
    auto const& ontology = *format_book().ontology;
    for (auto const* text : {"any lens sign, white pupil", "Open the hand."}) {
        CHECK(worksheet_yaml(ontology, true).find(text) != std::string::npos);
        CHECK(worksheet_yaml(ontology, false).find(text) == std::string::npos);
    }
}
