// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "conditions/group.h"

namespace asterism {

namespace {

class AtLeast final : public Group {
public:
    AtLeast(Span span, std::vector<ConditionPtr> children, int count)
        : Group(std::move(span), std::move(children)), count_(count) {}
    std::string_view kind() const override { return "at-least"; }
    Literal compile(Builder& builder, std::vector<Literal> const& children) const override {
        return builder.at_least(count_, children);
    }
    std::string describe(Vocabulary const& vocabulary) const override {
        return fmt::format("at least {} of {}", count_, joined(vocabulary, "and"));
    }
    ConditionState state() const override { return count_; }

private:
    int count_;
};

struct Syntax {
    int count = 0;
    yaml::Node list;
};

yaml::Table<Syntax> table() {
    yaml::Table<Syntax> table("condition");
    table.required("at-least", &Syntax::count, yaml::integer(1, 1000), "how many")
        .required("of", &Syntax::list, yaml::list_of_conditions(), "conditions");
    return table;
}

}  // namespace

ConditionPtr read_at_least(yaml::Node const& node, ReadContext const& context) {
    Syntax syntax;
    table().read(node, syntax, context.diagnostics);
    auto children = read_conditions(syntax.list, context);
    if (children.empty() || syntax.count == 0) return nullptr;
    if (syntax.count > static_cast<int>(children.size())) {
        context.diagnostics.error("unreachable", node.span,
                                  fmt::format("at least {} of {} conditions can never hold",
                                              syntax.count, children.size()));
        return nullptr;
    }
    return std::make_shared<AtLeast const>(node.span, std::move(children), syntax.count);
}

ConditionPtr restore_at_least(ConditionParts parts) {
    return std::make_shared<AtLeast const>(std::move(parts.span), std::move(parts.children),
                                           std::get<int>(parts.state));
}

yaml::Shape at_least_shape() { return table().shape(); }

}  // namespace asterism
