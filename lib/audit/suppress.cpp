// SPDX-License-Identifier: MIT
#include "audit/suppress.h"

#include <algorithm>

namespace asterism::audit {

namespace {

bool any_small(std::vector<std::uint64_t> const& cells, std::uint64_t least) {
    return std::any_of(cells.begin(), cells.end(), [&](auto c) { return is_small(c, least); });
}

/// What is withheld, added up, and how many strata that is.
struct Rest {
    std::vector<std::uint64_t> sum;
    std::size_t strata = 0;

    void add(std::vector<std::uint64_t> const& cells) {
        sum.resize(cells.size(), 0);
        for (std::size_t i = 0; i < cells.size(); ++i) sum[i] += cells[i];
        ++strata;
    }
    bool hides(std::uint64_t least) const { return strata > 1 && !any_small(sum, 2 * least); }
};

}  // namespace

bool is_small(std::uint64_t count, std::uint64_t least) { return count < least; }

ShownCells shown_cells(std::vector<std::uint64_t> const& cells, std::uint64_t least) {
    ShownCells result{std::vector<bool>(cells.size(), true), false};
    std::uint64_t hidden = 0, small = 0;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        if (!is_small(cells[i], least)) continue;
        result.shown[i] = false;
        hidden += cells[i];
        ++small;
    }
    if (small == 0) return result;
    auto const other = std::find(result.shown.begin(), result.shown.end(), true);
    if (other != result.shown.end()) {
        hidden += cells[static_cast<std::size_t>(other - result.shown.begin())];
        *other = false;
    }
    if (other == result.shown.end() || hidden < least + small * (least - 1)) {
        result.shown.assign(cells.size(), false);
        result.withheld = true;
    }
    return result;
}

std::vector<bool> shown_strata(std::vector<std::vector<std::uint64_t>> const& strata,
                               std::uint64_t least) {
    std::vector<bool> shown(strata.size(), true);
    Rest rest;
    for (std::size_t i = 0; i < strata.size(); ++i) {
        if (!any_small(strata[i], least)) continue;
        shown[i] = false;
        rest.add(strata[i]);
    }
    if (rest.strata == 0) return shown;
    for (std::size_t i = 0; i < strata.size() && !rest.hides(least); ++i) {
        if (!shown[i]) continue;
        shown[i] = false;
        rest.add(strata[i]);
    }
    return shown;
}

}  // namespace asterism::audit
