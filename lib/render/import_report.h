// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

#include <nlohmann/json_fwd.hpp>

#include "cases/imported.h"

namespace asterism {

/// Which HPO the mapping used: the version of the file given, and the one that the ontology names.
struct HpoUsed {
    std::string file_version;  ///< empty when no file was given
    std::string ontology_version;
    bool given = false;
};

/// How the terms of a foreign record became findings, for people: counts, what was mapped otherwise
/// than by its own id, every term that leads nowhere, what else was not read.
std::string import_text(ImportedCase const& imported, Ontology const& ontology,
                        std::string_view format, HpoUsed const& hpo);

/// The same in full: `format`, `hpo`, `counts`, `terms`, `left_out`.
nlohmann::ordered_json import_json(ImportedCase const& imported, Ontology const& ontology,
                                   std::string_view format, HpoUsed const& hpo);

}  // namespace asterism
