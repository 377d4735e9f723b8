// SPDX-License-Identifier: MIT
#include "base/number.h"

#include <algorithm>
#include <charconv>

#include <fmt/format.h>

namespace asterism {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool all_digits(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), is_digit);
}

constexpr std::size_t most_digits = 15;  // beyond that a double no longer holds what was written

}  // namespace

std::optional<Decimal> parse_decimal(std::string_view text) {
    auto const unsigned_text = text.substr(!text.empty() && text.front() == '-' ? 1 : 0);
    auto const point = unsigned_text.find('.');
    auto const whole = unsigned_text.substr(0, point);
    auto const fraction =
        point == std::string_view::npos ? std::string_view() : unsigned_text.substr(point + 1);
    bool const fine =
        all_digits(whole) && (point == std::string_view::npos || all_digits(fraction));
    if (!fine || whole.size() + fraction.size() > most_digits) return std::nullopt;
    Decimal result{0, static_cast<int>(fraction.size())};
    std::from_chars(text.data(), text.data() + text.size(), result.value);
    return result;
}

std::optional<int> parse_integer(std::string_view text) {
    auto const number = parse_decimal(text);
    if (!number || number->decimals > 0 || number->value > 1e9 || number->value < -1e9)
        return std::nullopt;
    return static_cast<int>(number->value);
}

std::string to_text(double value) { return fmt::format("{}", value == 0 ? 0.0 : value); }

std::string grouped(std::uint64_t number) {
    auto text = std::to_string(number);
    for (auto at = static_cast<int>(text.size()) - 3; at > 0; at -= 3)
        text.insert(static_cast<std::size_t>(at), ",");
    return text;
}

std::string_view trim(std::string_view text) {
    auto const space = std::string_view(" \t\r\n");
    auto const first = text.find_first_not_of(space);
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(space) - first + 1);
}

}  // namespace asterism
