// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <functional>
#include <string_view>
#include <vector>

namespace asterism::batch {

/// Remembers the last case ids by their hashes, in bounded memory (two tables of 2 MiB): at least
/// the last `at_least` different ones. Two ids are mixed up once in 10^14 times or so.
class SeenCases {
public:
    static constexpr std::size_t at_least = 1u << 17;

    /// False when the id was there already.
    bool add(std::string_view id) {
        auto const hash = std::hash<std::string_view>{}(id) | 1u;  // 0 is an empty slot
        if (has(older_, hash) || has(newer_, hash)) return false;
        if (count_ == at_least) {
            older_.swap(newer_);
            newer_.clear();
            count_ = 0;
        }
        if (newer_.empty()) newer_.resize(2 * at_least);
        newer_[slot(newer_, hash)] = hash;
        ++count_;
        return true;
    }

private:
    using Table = std::vector<std::uint64_t>;

    /// Where the hash is, or the empty slot where it belongs.
    static std::size_t slot(Table const& table, std::uint64_t hash) {
        auto at = (hash >> 1) % table.size();
        while (table[at] != 0 && table[at] != hash) at = (at + 1) % table.size();
        return at;
    }
    static bool has(Table const& table, std::uint64_t hash) {
        return !table.empty() && table[slot(table, hash)] == hash;
    }

    Table older_, newer_;
    std::size_t count_ = 0;
};

}  // namespace asterism::batch
