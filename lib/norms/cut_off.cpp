// SPDX-License-Identifier: MIT
#include "norms/cut_off.h"

namespace asterism::norms {

std::optional<bool> is_beyond(Band value, CutOff const& cut_off) {
    switch (cut_off.relation) {
        case Relation::below: return lies_below(value, cut_off.limit);
        case Relation::above: return lies_above(value, cut_off.limit);
        case Relation::at_most: return lies_at_most(value, cut_off.limit);
        default: return lies_at_least(value, cut_off.limit);
    }
}

}  // namespace asterism::norms
