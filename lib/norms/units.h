// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string_view>

namespace asterism::norms {

/// Converts between units of the same kind: mm, cm, m, in; g, kg, lb, oz. The same unit converts to
/// itself, whatever it is called ("/min", "%", "mmHg", "ratio"). Nothing when the two do not
/// measure the same thing. The inch is 25.4 mm and the pound 453.59237 g, exactly. The result is
/// rounded to nine decimals, so that 1.1 cm is 11 mm and not a hair more: cut-offs are compared
/// strictly.
[[nodiscard]] std::optional<double> convert(double value, std::string_view from,
                                            std::string_view to);

}  // namespace asterism::norms
