// SPDX-License-Identifier: MIT
#include <algorithm>

#include "render/assessment_words.h"
#include "render/html.h"
#include "render/worksheet.h"

namespace asterism {

namespace {

constexpr auto style =
    R"(:root { color-scheme: light dark; --paper: #fff; --ink: #16140f; --soft: #55504a; --rule: #8d867c; --mark: #f6e3b4; }
@media (prefers-color-scheme: dark) {
  :root { --paper: #16181b; --ink: #eceae6; --soft: #b9b4ab; --rule: #6d7178; --mark: #4a3a10; }
}
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 12px/1.35 system-ui, "Segoe UI", sans-serif; }
header, main, footer { max-width: 60rem; margin: 0 auto; padding: .5rem 1rem; }
h1 { margin: 0; font-size: 1.25rem; }
.fields { display: flex; flex-wrap: wrap; gap: .35rem 1rem; margin: .4rem 0 0; padding: 0; list-style: none; }
.fields li { flex: 1 1 9rem; border-bottom: 1px solid var(--rule); min-height: 1.5em; }
.regions { columns: 3 14rem; column-gap: 1.2rem; }
.sheet { margin-top: .8rem; }
.regions section { margin: 0 0 .5rem; }
h2 { margin: 0; padding-top: .15rem; font-size: 1em; border-bottom: 1.5px solid var(--ink); break-after: avoid; }
.steps { margin: 0; padding: 0; list-style: none; }
.steps li { display: flex; gap: .4em; align-items: baseline; border-bottom: 1px dotted var(--rule); break-inside: avoid; }
.box { flex: none; width: .8em; height: .8em; border: 1.2px solid var(--ink); transform: translateY(.08em); }
.essential { background: var(--mark); font-weight: 700; }
.found { margin: .2rem 0 0; padding: 0; list-style: none; }
.found li { border-bottom: 1px solid var(--rule); min-height: 1.7em; color: var(--soft); }
footer { color: var(--soft); font-size: .9em; }
@media print {
  @page { size: A4; margin: 9mm 10mm; }
  :root { color-scheme: light; --paper: #fff; --ink: #000; --soft: #333; --rule: #777; --mark: #e6e6e6; }
  body { font-size: 8.2pt; line-height: 1.32; }
  .found li { min-height: 2.3em; }
  header, main, footer { max-width: none; padding: 0 0 2mm; }
  .regions { columns: 3; column-gap: 4mm; }
  .sheet { margin-top: .8rem; }
.regions section { margin-bottom: 1.2mm; }
  .essential { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}
)";

void step_line(Markup& m, ExamStep const& step) {
    Scope const line(m, "li", {{"class", step.essential ? "essential" : "step"}});
    m.element("span", "", {{"class", "box"}, {"aria-hidden", "true"}});
    m.element("span", (step.essential ? "! " : "") + step.label);
}

bool belongs(ExamStep const& step, RegionId region) {
    return step.region == region && !step.result;
}

void region_section(Markup& m, Ontology const& ontology, RegionId region) {
    auto const& steps = ontology.steps;
    bool const any = std::any_of(steps.begin(), steps.end(),
                                 [&](ExamStep const& s) { return belongs(s, region); });
    if (!any) return;
    Scope const section(m, "section");
    m.element("h2", ontology.regions[region].label).new_line();
    Scope const list(m, "ul", {{"class", "steps"}});
    for (auto const& step : steps) {
        if (belongs(step, region)) step_line(m, step), m.new_line();
    }
}

void fields(Markup& m, std::initializer_list<char const*> names) {
    Scope const list(m, "ul", {{"class", "fields"}});
    for (auto const* name : names) m.element("li", name);
    m.new_line();
}

void found_lines(Markup& m) {
    Scope const section(m, "section", {{"class", "sheet"}});
    m.element("h2", "Found (with side), unsure, measures with unit").new_line();
    Scope const list(m, "ul", {{"class", "found"}});
    m.element("li", "found").element("li", "").element("li", "").element("li", "unsure");
    m.element("li", "head circumference, length, weight").element("li", "other measures");
    m.element("li", "history");
}

}  // namespace

std::string worksheet_html(Ontology const& ontology) {
    Markup m;
    m.open("header").element("h1", "Newborn examination, head to toe").new_line();
    m.element(
        "p",
        "Tick what was done. Lines marked ! on a tinted ground are essential. A step without a "
        "tick counts as not examined, never as normal.");
    fields(m, {"code", "sex", "gestation", "age", "born", "examined on", "by"});
    m.close().new_line().open("main").open("div", {{"class", "regions"}}).new_line();
    for (RegionId region = 0; region < ontology.regions.size(); ++region) {
        if (!ontology.regions[region].history) region_section(m, ontology, region);
    }
    m.close().new_line();
    found_lines(m);
    m.close().new_line().open("footer").element("p", safety_text());
    m.element("p",
              "ontology " + ontology.header.version + " (" + ontology.digest.substr(0, 8) + ")");
    return html_page({"Newborn examination sheet", style, m.take()});
}

}  // namespace asterism
