// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <cstdint>
#include <string_view>

namespace asterism {

/// Strong Kleene logic. The order no < unknown < yes makes `and` the minimum and `or` the maximum.
enum class Truth : std::uint8_t { no = 0, unknown = 1, yes = 2 };

constexpr Truth operator!(Truth t) { return static_cast<Truth>(2 - static_cast<int>(t)); }
constexpr Truth operator&(Truth a, Truth b) { return std::min(a, b); }
constexpr Truth operator|(Truth a, Truth b) { return std::max(a, b); }
constexpr Truth truth(bool b) { return b ? Truth::yes : Truth::no; }

constexpr std::string_view to_text(Truth t) {
    return t == Truth::yes ? "yes" : t == Truth::no ? "no" : "unknown";
}

}  // namespace asterism
