// SPDX-License-Identifier: MIT
#include "render/case_writers.h"

#include "base/named.h"
#include "render/json.h"

namespace asterism {

namespace {

std::string write_json(std::vector<Case> const& cases, WriteContext const& context,
                       std::vector<NotSaid>& not_said) {
    std::string text;
    for (auto const& baby : cases) text += json_text(case_json(baby, context.ontology, not_said));
    return text;
}

std::string write_lines(std::vector<Case> const& cases, WriteContext const& context,
                        std::vector<NotSaid>& not_said) {
    std::string text;
    for (auto const& baby : cases)
        text += case_json(baby, context.ontology, not_said).dump() + "\n";
    return text;
}

}  // namespace

std::vector<CaseWriter> const& case_writers() {
    static std::vector<CaseWriter> const table{
        {"yaml", "one case, YAML", false, write_yaml_cases},
        {"json", "one case, JSON", false, write_json},
        {"jsonl", "JSON Lines, a case a line", true, write_lines},
        {"csv", "a table, a baby a row", true, write_csv_cases},
        {"phenopacket", "GA4GH Phenopacket v2; several become JSON Lines", true,
         write_phenopackets},
    };
    return table;
}

CaseWriter const* case_writer(std::string_view name) { return entry_named(case_writers(), name); }

}  // namespace asterism
