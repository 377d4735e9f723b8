// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <vector>

namespace asterism::audit {

/// Counts below `least` are small: they could point to a baby. Zero is small too, since knowing
/// where the zeros are tells which cell holds the one baby. `least` is at least 2.
bool is_small(std::uint64_t count, std::uint64_t least);

/// What may be shown of one table whose total is known.
struct ShownCells {
    std::vector<bool> shown;  ///< by cell
    bool withheld = false;    ///< nothing may be shown, not even the sum of the hidden cells
};

/// Hides each small cell of a table and, so that the total does not give it away, the first other
/// cell. What the hidden cells sum to is then at least so large that every small cell could be
/// anything from 0 to `least` - 1, also for a reader who knows this rule; where it would not be,
/// the whole table is withheld.
ShownCells shown_cells(std::vector<std::uint64_t> const& cells, std::uint64_t least);

/// Which strata of a table that is shown whole may be shown: those without a small cell, except
/// that enough of them, in order, are withheld too for the withheld ones together to have no small
/// cell and to be more than one.
std::vector<bool> shown_strata(std::vector<std::vector<std::uint64_t>> const& strata,
                               std::uint64_t least);

}  // namespace asterism::audit
