// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "cases/case_readers.h"
#include "render/import_report.h"

namespace asterism::cli {

/// The cases of some files and folders, each with the format it was read in.
struct CaseInput {
    CaseReader const* reader = nullptr;
    std::vector<ImportedCase> cases;
    Diagnostics diagnostics;
};

/// The reader with this name; a usage error names the nearest.
CaseReader const& reader_named(std::string const& name);
/// `yaml, json, ...`, for help texts.
std::string reader_names();

/// An unaltered hp.json or hp.obo, gzip or not; nothing, with the problems reported, when it cannot
/// be read.
std::optional<Hpo> load_hpo(std::string const& path, Diagnostics& diagnostics);

/// Reads every path; a folder gives its files with the reader's endings, sorted. Without a name the
/// ending of each file decides. One entry a file, so that a problem in one leaves the others.
std::vector<CaseInput> read_case_files(std::vector<std::string> const& paths,
                                       std::string const& reader_name,
                                       ImportContext const& context);

HpoUsed hpo_used(std::optional<Hpo> const& hpo, Ontology const& ontology);

}  // namespace asterism::cli
