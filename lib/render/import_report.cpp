// SPDX-License-Identifier: MIT
#include "render/import_report.h"

#include <array>
#include <map>

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <nlohmann/json.hpp>

#include "cases/term_statements.h"
#include "render/escape.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::array mappings{Mapping::exact,   Mapping::by_ancestor, Mapping::from_above,
                              Mapping::by_name, Mapping::shared_id,   Mapping::nowhere};

std::map<Mapping, std::size_t> counted(ImportedCase const& imported) {
    std::map<Mapping, std::size_t> counts;
    for (auto const& term : imported.terms) ++counts[term.how];
    return counts;
}

std::vector<std::string> labels(MappedTerm const& term, Ontology const& ontology) {
    constexpr std::size_t most = 3;
    std::vector<std::string> names;
    for (auto const id : term.findings) {
        if (names.size() == most) {
            names.push_back(fmt::format("and {} more", term.findings.size() - most));
            break;
        }
        names.push_back(ontology.at(id).label);
    }
    return names;
}

std::string_view words(Mapping how) {
    switch (how) {
        case Mapping::exact: return "by its id in force";
        case Mapping::by_ancestor: return "a kind of";
        case Mapping::from_above: return "excluded, and so are its kinds";
        case Mapping::by_name: return "by its name";
        case Mapping::shared_id: return "one of several, taken as unsure";
        case Mapping::nowhere: return "";
    }
    return "";
}

bool worth_a_line(MappedTerm const& term) {
    return term.how != Mapping::nowhere && (term.how != Mapping::exact || !term.via.empty());
}

std::string mapped_lines(ImportedCase const& imported, Ontology const& ontology) {
    std::string text;
    for (auto const& term : imported.terms) {
        if (term.state == TermState::not_now)
            text += fmt::format("  {}: not there at the examination\n", quoted_term(term));
        else if (term.state == TermState::not_examined)
            text += fmt::format("  {}: recorded as not examined\n", quoted_term(term));
        else if (worth_a_line(term))
            text += fmt::format("  {}: {} {}{}\n", quoted_term(term), words(term.how),
                                fmt::join(labels(term, ontology), ", "),
                                term.via.empty() ? "" : fmt::format(" ({})", term.via));
    }
    return text;
}

std::string nowhere_lines(ImportedCase const& imported) {
    std::string text;
    for (auto const& term : imported.terms) {
        if (term.how == Mapping::nowhere)
            text += fmt::format("    {} {}\n", to_text(term.state), quoted_term(term));
    }
    return text;
}

std::string hpo_line(HpoUsed const& hpo) {
    if (!hpo.given)
        return fmt::format(
            "no HPO file was given (--hpo), so only ids as our findings carry them "
            "({}) map",
            hpo.ontology_version);
    return fmt::format("HPO {}",
                       hpo.file_version.empty() ? "of no stated version" : hpo.file_version);
}

}  // namespace

std::string import_text(ImportedCase const& imported, Ontology const& ontology,
                        std::string_view format, HpoUsed const& hpo) {
    auto counts = counted(imported);
    auto text =
        fmt::format("Read from {}: {}\n  {} terms: ", format, hpo_line(hpo), imported.terms.size());
    std::vector<std::string> parts;
    for (auto const how : mappings) {
        if (counts[how] > 0) parts.push_back(fmt::format("{} {}", counts[how], to_text(how)));
    }
    text += fmt::format("{}\n", fmt::join(parts, ", ")) + mapped_lines(imported, ontology);
    if (counts[Mapping::nowhere] > 0)
        text += fmt::format("  not mapped ({}), and so not judged:\n", counts[Mapping::nowhere]) +
                nowhere_lines(imported);
    for (auto const& left : imported.left_out)
        text += fmt::format("  not read: {} ({})\n", left.what, left.why);
    return terminal_safe(text, true);
}

Json import_json(ImportedCase const& imported, Ontology const& ontology, std::string_view format,
                 HpoUsed const& hpo) {
    Json result{{"format", format},
                {"hpo",
                 {{"file", hpo.given ? Json(hpo.file_version) : Json()},
                  {"ontology", hpo.ontology_version}}}};
    auto counts = counted(imported);
    for (auto const how : mappings) result["counts"][std::string(to_text(how))] = counts[how];
    result["terms"] = Json::array();
    for (auto const& term : imported.terms) {
        Json one{{"id", term.id.text},
                 {"label", term.label},
                 {"state", to_text(term.state)},
                 {"mapping", to_text(term.how)}};
        if (!term.via.empty()) one["via"] = term.via;
        one["findings"] = Json::array();
        for (auto const id : term.findings) one["findings"].push_back(ontology.at(id).id.text);
        one["place"] = term.id.span.place();
        result["terms"].push_back(std::move(one));
    }
    result["left_out"] = Json::array();
    for (auto const& left : imported.left_out)
        result["left_out"].push_back(
            {{"what", left.what}, {"why", left.why}, {"place", left.span.place()}});
    return result;
}

}  // namespace asterism
