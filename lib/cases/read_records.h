// SPDX-License-Identifier: MIT
#pragma once

#include <iterator>
#include <vector>

#include "cases/hpo_mapping.h"
#include "cases/imported.h"
#include "cases/json_fields.h"

namespace asterism {

/// Reads each JSON value of a source with a reader of its own; all lean on one way to our findings.
template <class Reader>
std::vector<ImportedCase> read_records(SourcePtr const& source, ImportContext const& context,
                                       Diagnostics& diagnostics) {
    std::vector<ImportedCase> cases;
    HpoMapper const mapper(context);
    for (auto const& value : read_json_values(source, diagnostics)) {
        auto more = Reader(context, mapper, diagnostics).read(value);
        cases.insert(cases.end(), std::make_move_iterator(more.begin()),
                     std::make_move_iterator(more.end()));
    }
    return cases;
}

}  // namespace asterism
