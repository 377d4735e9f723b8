// SPDX-License-Identifier: MIT
#include "cases/case.h"

#include <algorithm>

namespace asterism {

std::string_view to_text(Sides sides) {
    switch (sides) {
        case Sides::left: return "left";
        case Sides::right: return "right";
        case Sides::both: return "both";
        case Sides::not_said: return "";
    }
    return "";
}

bool Case::nothing_examined() const {
    return std::none_of(step_done.begin(), step_done.end(), [](bool done) { return done; });
}

Case empty_case(Ontology const& ontology) {
    Case nothing;
    nothing.step_done.assign(ontology.steps.size(), false);
    return nothing;
}

}  // namespace asterism
