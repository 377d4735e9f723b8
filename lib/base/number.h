// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace asterism {

/// A plain decimal number and how many digits stood after the point (its printed precision).
struct Decimal {
    double value = 0;
    int decimals = 0;
};

/// Reads `-12`, `0.5`, `31.0`; nothing else: no octal or hexadecimal reading, no exponent, no
/// infinity, no leading plus, at most 15 digits. Leading zeros are read as decimal.
std::optional<Decimal> parse_decimal(std::string_view text);
std::optional<int> parse_integer(std::string_view text);

/// The shortest text that reads back as the same number: 3 -> "3", 0.5 -> "0.5".
std::string to_text(double value);

/// "1,000,000".
std::string grouped(std::uint64_t number);

std::string_view trim(std::string_view text);

}  // namespace asterism
