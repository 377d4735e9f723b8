// SPDX-License-Identifier: MIT
#include "cases/imported.h"

namespace asterism {

std::string_view to_text(Mapping mapping) {
    switch (mapping) {
        case Mapping::exact: return "exact";
        case Mapping::by_ancestor: return "by-ancestor";
        case Mapping::from_above: return "from-above";
        case Mapping::by_name: return "by-name";
        case Mapping::shared_id: return "shared-id";
        case Mapping::nowhere: return "nowhere";
    }
    return "";
}

std::string_view to_text(TermState state) {
    switch (state) {
        case TermState::observed: return "observed";
        case TermState::excluded: return "excluded";
        case TermState::unsure: return "unsure";
        case TermState::not_now: return "not-now";
        case TermState::not_examined: return "not-examined";
    }
    return "";
}

}  // namespace asterism
