// SPDX-License-Identifier: MIT
// JUnit XML, the form that build servers read: one test case a vignette.
#include <sstream>

#include <fmt/format.h>
#include <pugixml.hpp>

#include "render/rehearsal.h"

namespace asterism {

namespace {

void property(pugi::xml_node properties, char const* name, std::string const& value) {
    auto node = properties.append_child("property");
    node.append_attribute("name") = name;
    node.append_attribute("value") = value.c_str();
}

void add_properties(pugi::xml_node suite, RehearsalView const& view) {
    auto properties = suite.append_child("properties");
    auto const& coverage = view.rehearsal.coverage;
    property(properties, "conditions", std::to_string(coverage.nodes().size()));
    property(properties, "conditions-covered", std::to_string(coverage.covered()));
    if (!view.trial) return;
    property(properties, "mutants", std::to_string(view.trial->total()));
    for (auto const fate : {MutantFate::killed, MutantFate::equivalent, MutantFate::survived})
        property(properties, fmt::format("mutants-{}", to_text(fate)).c_str(),
                 std::to_string(view.trial->count(fate)));
}

void add_case(pugi::xml_node suite, Vignette const& vignette,
              std::vector<VignetteFailure> const& failures) {
    auto test = suite.append_child("testcase");
    test.append_attribute("name") = vignette.id.text.c_str();
    auto const file = vignette.id.span.known() ? vignette.id.span.source->name() : std::string();
    test.append_attribute("classname") = file.c_str();
    if (vignette.generated) {
        test.append_child("skipped").append_attribute("message") = "generated";
        return;
    }
    if (failures.empty()) return;
    auto failure = test.append_child("failure");
    failure.append_attribute("message") = failures.front().message.c_str();
    std::string text;
    for (auto const& one : failures)
        text += fmt::format("{}: {}\n", one.place.place(), one.message);
    failure.text() = text.c_str();
}

}  // namespace

std::string rehearsal_junit(RehearsalView const& view) {
    auto const& rehearsal = view.rehearsal;
    pugi::xml_document document;
    auto declaration = document.append_child(pugi::node_declaration);
    declaration.append_attribute("version") = "1.0";
    declaration.append_attribute("encoding") = "UTF-8";
    auto suite = document.append_child("testsuites").append_child("testsuite");
    std::size_t generated = 0;
    for (auto const& vignette : rehearsal.vignettes) generated += vignette.generated ? 1 : 0;
    suite.append_attribute("name") = "vignettes";
    suite.append_attribute("tests") = static_cast<unsigned long long>(rehearsal.vignettes.size());
    suite.append_attribute("failures") = static_cast<unsigned long long>(failing(rehearsal));
    suite.append_attribute("errors") = 0;
    suite.append_attribute("skipped") = static_cast<unsigned long long>(generated);
    add_properties(suite, view);
    for (std::size_t i = 0; i < rehearsal.vignettes.size(); ++i)
        add_case(suite, rehearsal.vignettes[i], rehearsal.failures[i]);
    std::ostringstream out;
    document.save(out, "  ");
    return out.str();
}

}  // namespace asterism
