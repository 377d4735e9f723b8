// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>

namespace asterism::yaml {

/// Bounds on one file, so that no input can exhaust the machine.
inline constexpr std::size_t most_bytes = 16u << 20;
inline constexpr int most_depth = 64;

}  // namespace asterism::yaml
