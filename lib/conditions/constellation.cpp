// SPDX-License-Identifier: MIT
#include "conditions/read.h"
#include "yaml/table.h"

namespace asterism {

namespace {

class Constellation final : public Condition {
public:
    Constellation(Span span, ConstellationId id) : Condition(std::move(span)), id_(id) {}
    std::string_view kind() const override { return "constellation"; }
    Leaf leaf() const override { return {Leaf::Kind::constellation, id_, 0, false, false}; }
    Literal compile(Builder& builder, std::vector<Literal> const&) const override {
        return builder.reached(id_);
    }
    std::string describe(Vocabulary const& vocabulary) const override {
        return "the counting rule of " + vocabulary.constellations[id_] + " reached";
    }
    ConditionState state() const override { return id_; }

private:
    ConstellationId id_;
};

struct Syntax {
    Word constellation;
};

yaml::Table<Syntax> table() {
    yaml::Table<Syntax> table("condition");
    table.required("constellation", &Syntax::constellation, yaml::word("constellation"),
                   "the constellation, by id");
    return table;
}

}  // namespace

ConditionPtr read_constellation(yaml::Node const& node, ReadContext const& context) {
    Syntax syntax;
    table().read(node, syntax, context.diagnostics);
    ConstellationId id = 0;
    auto const no_label = [](std::uint32_t) { return std::string(); };
    bool const known = !syntax.constellation.empty() &&
                       resolve_word(context.constellations, syntax.constellation, "constellation",
                                    no_label, id, context.diagnostics);
    return known ? std::make_shared<Constellation const>(node.span, id) : nullptr;
}

ConditionPtr restore_constellation(ConditionParts parts) {
    return std::make_shared<Constellation const>(std::move(parts.span),
                                                 std::get<ConstellationId>(parts.state));
}

yaml::Shape constellation_shape() { return table().shape(); }

}  // namespace asterism
