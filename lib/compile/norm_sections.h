// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "norms/description.h"
#include "yaml/table.h"

namespace asterism {

/// One entry of a `norms:` section: the description, and the words in it that must be looked up.
struct NormSyntax : norms::NormDescription {
    Word id;
    std::vector<Word> measure_names;
    std::vector<Word> source_names;
};

/// The field table of a norm: reads it and describes it for schemas.
yaml::Table<NormSyntax> const& norm_table();

}  // namespace asterism
