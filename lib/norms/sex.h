// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

namespace asterism::norms {

/// Sex of the baby as examined. `undetermined` also stands for "not given": both sexes are then
/// possible.
enum class Sex { female, male, undetermined };

/// "female", "male" or "undetermined".
[[nodiscard]] constexpr std::string_view sex_text(Sex sex) {
    switch (sex) {
        case Sex::female: return "female";
        case Sex::male: return "male";
        default: return "undetermined";
    }
}

}  // namespace asterism::norms
