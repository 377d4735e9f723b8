// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace asterism {

/// The entry of a table that has this `name`, or null.
template <class Entry>
Entry const* entry_named(std::vector<Entry> const& table, std::string_view name) {
    auto const found = std::find_if(table.begin(), table.end(),
                                    [&](Entry const& entry) { return entry.name == name; });
    return found == table.end() ? nullptr : &*found;
}

/// The names of a table's entries, in its order.
template <class Table>
std::vector<std::string> names_of(Table const& table) {
    std::vector<std::string> names;
    for (auto const& entry : table) names.emplace_back(entry.name);
    return names;
}

}  // namespace asterism
