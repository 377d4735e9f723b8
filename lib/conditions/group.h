// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "conditions/condition.h"
#include "conditions/read.h"
#include "yaml/table.h"

namespace asterism {

/// What all, any, none and at-least have in common: a list of conditions.
class Group : public Condition {
public:
    Group(Span span, std::vector<ConditionPtr> children)
        : Condition(std::move(span)), children_(std::move(children)) {}
    std::vector<ConditionPtr> children() const override { return children_; }
    ConditionState state() const override { return {}; }

protected:
    /// The children in words, joined by a conjunction, in brackets when there are several.
    std::string joined(Vocabulary const& vocabulary, std::string_view conjunction) const {
        std::vector<std::string> parts;
        for (auto const& child : children_) parts.push_back(child->describe(vocabulary));
        auto const text = list_in_words(parts, conjunction);
        return parts.size() > 1 ? "(" + text + ")" : text;
    }
    std::size_t size() const { return children_.size(); }

private:
    std::vector<ConditionPtr> children_;
};

/// The only field of a group is its keyword.
struct GroupSyntax {
    yaml::Node list;
};

inline yaml::Table<GroupSyntax> group_table(std::string keyword) {
    yaml::Table<GroupSyntax> table("condition");
    table.required(std::move(keyword), &GroupSyntax::list, yaml::list_of_conditions(),
                   "conditions");
    return table;
}

template <class G>
ConditionPtr read_group(yaml::Node const& node, ReadContext const& context, std::string keyword) {
    GroupSyntax syntax;
    group_table(std::move(keyword)).read(node, syntax, context.diagnostics);
    auto children = read_conditions(syntax.list, context);
    return children.empty() ? nullptr : std::make_shared<G const>(node.span, std::move(children));
}

}  // namespace asterism
