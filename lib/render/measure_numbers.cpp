// SPDX-License-Identifier: MIT
#include "render/measure_numbers.h"

#include <cmath>

#include <nlohmann/json.hpp>

namespace asterism {

double rounded(double value) {
    constexpr double four_decimals = 1e4;
    auto const result = std::round(value * four_decimals) / four_decimals;
    return result == 0 ? 0 : result;  // never -0
}

void add_band(nlohmann::ordered_json& object, std::string const& key,
              std::optional<norms::Band> const& as_read,
              std::optional<norms::Band> const& with_margin) {
    if (!as_read) return;
    auto const low = rounded(as_read->low);
    object[key] = low == rounded(as_read->high) ? nlohmann::ordered_json(low) : nullptr;
    auto const band = with_margin.value_or(*as_read);
    object[key + "_band"] = {rounded(band.low), rounded(band.high)};
}

}  // namespace asterism
