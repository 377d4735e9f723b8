// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>

#include "conditions/read.h"

namespace asterism {

namespace {

struct Restorer {
    std::string_view kind;
    ConditionPtr (*restore)(ConditionParts);
};

constexpr std::array restorers{
    Restorer{"present", restore_present},
    Restorer{"absent", restore_absent},
    Restorer{"all", restore_all},
    Restorer{"any", restore_any},
    Restorer{"none", restore_none},
    Restorer{"at-least", restore_at_least},
    Restorer{"tally", restore_tally},
    Restorer{"constellation", restore_constellation},
    Restorer{"measured", restore_measured},
    Restorer{"age", restore_age},
    Restorer{"gestation", restore_gestation},
    Restorer{"sex", restore_sex},
};

}  // namespace

ConditionPtr restore_condition(std::string_view kind, ConditionParts parts) {
    auto const found = std::ranges::find(restorers, kind, &Restorer::kind);
    return found == restorers.end() ? nullptr : found->restore(std::move(parts));
}

std::vector<std::string_view> restorable_kinds() {
    std::vector<std::string_view> kinds;
    for (auto const& restorer : restorers) kinds.push_back(restorer.kind);
    return kinds;
}

}  // namespace asterism
