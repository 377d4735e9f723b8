// SPDX-License-Identifier: MIT
#include "cases/case_readers.h"

#include "base/named.h"
#include "cases/csv_cases.h"
#include "cases/fhir.h"
#include "cases/json_fields.h"
#include "cases/phenopacket.h"
#include "cases/read_case.h"

namespace asterism {

namespace {

std::vector<ImportedCase> read_one(SourcePtr const& source, ImportContext const& context,
                                   Diagnostics& diagnostics) {
    std::vector<ImportedCase> cases(1);
    cases.front().baby = read_case(source, context.ontology, diagnostics);
    return cases;
}

std::vector<ImportedCase> read_lines(SourcePtr const& source, ImportContext const& context,
                                     Diagnostics& diagnostics) {
    std::vector<ImportedCase> cases;
    for (auto const& value : read_json_values(source, diagnostics)) {
        ImportedCase one;
        one.baby = read_case(value, context.ontology, diagnostics);
        cases.push_back(std::move(one));
    }
    return cases;
}

}  // namespace

std::vector<CaseReader> const& case_readers() {
    static std::vector<CaseReader> const table{
        {"yaml", "one case, YAML", {".yaml", ".yml"}, false, read_one},
        {"json", "one case, JSON", {".json"}, false, read_one},
        {"jsonl", "JSON Lines, a case a line", {".jsonl", ".ndjson"}, false, read_lines},
        {"csv", "a table, a baby or a finding a row", {".csv"}, false, read_csv_cases},
        {"phenopacket",
         "GA4GH Phenopacket v2, JSON or JSON Lines",
         {".json", ".jsonl", ".ndjson"},
         true,
         read_phenopackets},
        {"fhir",
         "FHIR R4 Bundle of Patient, Observation, Condition, JSON",
         {".json", ".jsonl", ".ndjson"},
         true,
         read_fhir},
    };
    return table;
}

CaseReader const* case_reader(std::string_view name) { return entry_named(case_readers(), name); }

CaseReader const* case_reader_for(std::string_view file_name) {
    for (auto const& reader : case_readers()) {
        for (auto const ending : reader.endings) {
            if (file_name.ends_with(ending)) return &reader;
        }
    }
    return nullptr;
}

}  // namespace asterism
