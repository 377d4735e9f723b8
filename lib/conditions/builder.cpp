// SPDX-License-Identifier: MIT
#include "conditions/builder.h"

namespace asterism {

Literal Builder::at_least(std::int64_t count, std::vector<Literal> const& literals) {
    std::vector<Weighted> inputs;
    for (auto const literal : literals) inputs.push_back({literal, 1});
    return gate(count, std::move(inputs));
}

Literal Builder::all(std::vector<Literal> const& literals) {
    return literals.size() == 1 ? literals.front()
                                : at_least(static_cast<std::int64_t>(literals.size()), literals);
}

Literal Builder::any(std::vector<Literal> const& literals) {
    return literals.size() == 1 ? literals.front() : at_least(1, literals);
}

}  // namespace asterism
