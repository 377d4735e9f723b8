// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace asterism::batch {

/// The cells of one baby's row as one JSON case: pairs of column and trimmed text.
std::string json_case(std::vector<std::pair<std::string_view, std::string_view>> const& cells);

/// One row of the long form.
struct LongRow {
    std::string finding, state, side, familial;
};

/// The rows of one baby as one JSON case.
std::string json_case(std::string_view id, std::vector<LongRow> const& rows);

}  // namespace asterism::batch
