// SPDX-License-Identifier: MIT
#include "base/nearest.h"

#include <algorithm>
#include <cstdlib>
#include <tuple>

#include <fmt/format.h>

#include "base/fold.h"

namespace asterism {

namespace {

std::u32string code_points(std::string_view text) {
    std::u32string result;
    for (std::size_t i = 0; i < text.size();) {
        auto const lead = static_cast<unsigned char>(text[i]);
        std::size_t const length = lead < 0x80 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
        char32_t point = lead;
        for (std::size_t k = 1; k < length && i + k < text.size(); ++k) {
            point = point * 64 + static_cast<unsigned char>(text[i + k]);
        }
        result += point;
        i += length;
    }
    return result;
}

int slip_limit(std::size_t length) {
    return length < 4 ? 1 : std::max(2, static_cast<int>(length / 4));
}

/// Optimal string alignment distance; three rows suffice because a swap looks two rows back.
int alignment(std::u32string const& a, std::u32string const& b) {
    std::vector<int> two_back(b.size() + 1), back(b.size() + 1), row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) back[j] = static_cast<int>(j);
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = static_cast<int>(i);
        for (std::size_t j = 1; j <= b.size(); ++j) {
            row[j] = std::min(
                {back[j] + 1, row[j - 1] + 1, back[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1)});
            bool const swap = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (swap) row[j] = std::min(row[j], two_back[j - 2] + 1);
        }
        std::swap(two_back, back);
        std::swap(back, row);
    }
    return back[b.size()];
}

struct Candidate {
    int distance;
    std::string name;
    auto key() const { return std::tuple(distance, name.size(), std::string_view(name)); }
};

std::optional<int> closeness(std::string const& typed, std::string const& known) {
    int const limit = slip_limit(typed.size());
    if (auto const slips = edit_distance(typed, known, limit)) return slips;
    bool const inside = typed.size() >= 4 && known.find(typed) != std::string::npos;
    return inside ? std::optional(limit + 1) : std::nullopt;
}

}  // namespace

std::optional<int> edit_distance(std::string_view a, std::string_view b, int limit) {
    auto const x = code_points(a);
    auto const y = code_points(b);
    if (std::abs(static_cast<int>(x.size()) - static_cast<int>(y.size())) > limit)
        return std::nullopt;
    int const distance = alignment(x, y);
    return distance <= limit ? std::optional(distance) : std::nullopt;
}

std::vector<std::string> nearest(std::string_view typed, std::vector<std::string> const& known,
                                 std::size_t count) {
    auto const folded = fold(typed);
    if (folded.empty()) return {};
    std::vector<Candidate> candidates;
    for (auto const& name : known) {
        if (auto const distance = closeness(folded, fold(name)))
            candidates.push_back({*distance, name});
    }
    std::sort(candidates.begin(), candidates.end(),
              [](Candidate const& a, Candidate const& b) { return a.key() < b.key(); });
    std::vector<std::string> names;
    for (auto const& candidate : candidates) {
        if (names.size() == count) break;
        if (std::find(names.begin(), names.end(), candidate.name) == names.end())
            names.push_back(candidate.name);
    }
    return names;
}

std::string did_you_mean(std::string_view typed, std::vector<std::string> const& known) {
    return did_you_mean(nearest(typed, known));
}

std::string did_you_mean(std::vector<std::string> const& names) {
    std::string list;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (i > 0) list += i + 1 == names.size() ? " or " : ", ";
        list += fmt::format("`{}`", names[i]);
    }
    return list.empty() ? list : "did you mean " + list;
}

}  // namespace asterism
