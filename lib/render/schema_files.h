// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "compile/compiled.h"

namespace asterism {

/// A kind of file that people write, and the shape that the program reads it by.
struct SchemaFile {
    std::string_view name;  ///< as the verb `schema` has it
    std::string_view title;
    yaml::Shape (*shape)();
};

std::vector<SchemaFile> const& schema_files();

/// The schema of one kind of file, with the names of this book and ontology for completion.
nlohmann::ordered_json schema_of(SchemaFile const& file, CompiledRulebook const& book);

}  // namespace asterism
