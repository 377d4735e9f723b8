// SPDX-License-Identifier: MIT
#include "batch/change_lists.h"

#include <algorithm>

namespace asterism::batch {

ChangeLists::Place ChangeLists::add(StepChange const& change) {
    std::vector<Item> items{{static_cast<std::uint32_t>(change.facts.size()),
                             static_cast<std::uint32_t>(change.gates.size())}};
    for (auto const& [fact, value] : change.facts)
        items.push_back({fact, static_cast<std::uint32_t>(value)});
    for (auto const& [gate, added] : change.gates) items.push_back({gate, added.bits()});
    std::uint64_t hash = 0;
    for (auto const& [node, bits] : items)
        hash = (hash ^ node ^ std::uint64_t{bits} << 32) * 0x9E3779B97F4A7C15ull;
    auto const [first, last] = places_.equal_range(hash);
    for (auto known = first; known != last; ++known) {
        auto const begin = items_.begin() + known->second;
        if (begin[0] == items[0] && std::equal(items.begin(), items.end(), begin))
            return known->second;
    }
    auto const place = static_cast<Place>(items_.size());
    items_.insert(items_.end(), items.begin(), items.end());
    places_.emplace(hash, place);
    return place;
}

}  // namespace asterism::batch
