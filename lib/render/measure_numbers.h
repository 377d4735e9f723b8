// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>

#include <nlohmann/json_fwd.hpp>

#include "norms/band.h"

namespace asterism {

/// Four decimals: more than any tape can give, few enough to be the same on every machine.
double rounded(double value);

/// Adds `key` as one number, or null when it is only known as a band, and `key_band` as the two
/// ends with the margin of the reading. Adds nothing when there is no such number.
void add_band(nlohmann::ordered_json& object, std::string const& key,
              std::optional<norms::Band> const& as_read,
              std::optional<norms::Band> const& with_margin);

}  // namespace asterism
