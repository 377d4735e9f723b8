// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cases/imported.h"
#include "render/case_parts.h"

namespace asterism {

/// What writers lean on. `created`: RFC 3339 time for formats that demand one; the library reads no
/// clock.
struct WriteContext {
    Ontology const& ontology;
    Hpo const* hpo = nullptr;
    std::string created;
};

/// A format in which cases can be written: one file and one line of the table. `many`: several
/// cases fit in one text.
struct CaseWriter {
    std::string_view name;
    std::string_view summary;
    bool many;
    std::string (*write)(std::vector<Case> const&, WriteContext const&, std::vector<NotSaid>&);
};

std::vector<CaseWriter> const& case_writers();
/// The writer with this name, or null.
CaseWriter const* case_writer(std::string_view name);

std::string write_yaml_cases(std::vector<Case> const& cases, WriteContext const& context,
                             std::vector<NotSaid>& not_said);
std::string write_csv_cases(std::vector<Case> const& cases, WriteContext const& context,
                            std::vector<NotSaid>& not_said);
std::string write_phenopackets(std::vector<Case> const& cases, WriteContext const& context,
                               std::vector<NotSaid>& not_said);

}  // namespace asterism
