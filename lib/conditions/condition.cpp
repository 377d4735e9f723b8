// SPDX-License-Identifier: MIT
#include "conditions/condition.h"

#include <fmt/format.h>

namespace asterism {

CompiledCondition compile(ConditionPtr const& condition, Builder& builder) {
    CompiledCondition compiled{condition, {}, {}};
    std::vector<Literal> literals;
    for (auto const& child : condition->children()) {
        compiled.children.push_back(compile(child, builder));
        literals.push_back(compiled.children.back().literal);
    }
    compiled.literal = condition->compile(builder, literals);
    return compiled;
}

std::string list_in_words(std::vector<std::string> const& parts, std::string_view conjunction) {
    std::string text;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i > 0)
            text += i + 1 == parts.size() ? fmt::format(" {} ", conjunction) : std::string(", ");
        text += parts[i];
    }
    return text;
}

}  // namespace asterism
