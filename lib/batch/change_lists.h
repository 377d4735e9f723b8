// SPDX-License-Identifier: MIT
#pragma once

#include <unordered_map>
#include <vector>

#include "batch/step_change.h"

namespace asterism::batch {

/// Many changes, each once, close together in memory.
class ChangeLists {
public:
    using Place = std::uint32_t;  ///< 0 is no change's place
    ChangeLists() : items_(1) {}

    Place add(StepChange const& change);
    void apply(Place place, FastRun& run) const {
        auto const* item = &items_[place];
        auto const* const facts = item + 1 + item->node;
        auto const* const end = facts + item->bits;
        for (++item; item < facts; ++item) run.set(item->node, static_cast<Truth>(item->bits));
        for (; item < end; ++item) run.add(item->node, Margin::from_bits(item->bits));
    }

private:
    /// First how many facts and gates, then a fact and its value or a gate and its margin each.
    struct Item {
        std::uint32_t node = 0;
        std::uint32_t bits = 0;
        friend bool operator==(Item const&, Item const&) = default;
    };

    std::vector<Item> items_;
    std::unordered_multimap<std::uint64_t, Place> places_;  ///< by hash
};

}  // namespace asterism::batch
