// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "base/lazy_list.h"
#include "base/source.h"
#include "conditions/builder.h"
#include "conditions/state.h"
#include "ontology/ontology.h"

namespace asterism {

class Condition;
using ConditionPtr = std::shared_ptr<Condition const>;

/// The names that a description prints.
struct Vocabulary {
    Ontology const& ontology;
    LazyList<std::string> tallies;         ///< labels, by TallyId
    LazyList<std::string> constellations;  ///< labels, by ConstellationId
};

/// What a condition without children looks at, for whoever explains it.
struct Leaf {
    enum class Kind : std::uint8_t {
        none,
        finding,
        tally,
        constellation,
        measure,
        age,
        gestation,
        sex
    };

    Kind kind = Kind::none;
    std::uint32_t index = 0;    ///< FindingId, TallyId, ConstellationId or MeasureId
    Tenths threshold = 0;       ///< tally
    bool at_most = false;       ///< tally
    bool wants_absent = false;  ///< finding
};

/// One condition of the rule language as read: names resolved, place kept, immutable.
class Condition {
public:
    explicit Condition(Span span) : span_(std::move(span)) {}
    virtual ~Condition() = default;

    Span const& span() const { return span_; }

    /// The keyword it is written with.
    virtual std::string_view kind() const = 0;
    virtual std::vector<ConditionPtr> children() const { return {}; }
    virtual Leaf leaf() const { return {}; }
    /// True when it holds because its children do not.
    virtual bool negates() const { return false; }
    /// Builds it from its children's literals, in the order of `children()`.
    virtual Literal compile(Builder& builder, std::vector<Literal> const& children) const = 0;
    /// One phrase in words, such as "white pupil present".
    virtual std::string describe(Vocabulary const& vocabulary) const = 0;
    /// What `restore_condition` needs besides the kind, the place and the children.
    virtual ConditionState state() const = 0;

private:
    Span span_;
};

/// A condition joined to its node and to its compiled children, so that its truth can be looked up
/// and explained.
struct CompiledCondition {
    ConditionPtr condition;
    Literal literal;
    std::vector<CompiledCondition> children;
};

/// A compiled condition whose literal is at hand, while the rest may be made when first asked for.
class Clause {
public:
    Clause() = default;
    Clause(CompiledCondition condition) : literal(condition.literal), rest_(std::move(condition)) {}
    Clause(Literal node, Lazy<CompiledCondition> rest) : literal(node), rest_(std::move(rest)) {}

    operator CompiledCondition const&() const { return *rest_; }
    CompiledCondition const& operator*() const { return *rest_; }
    CompiledCondition const* operator->() const { return &*rest_; }

    Literal literal;

private:
    Lazy<CompiledCondition> rest_;
};

CompiledCondition compile(ConditionPtr const& condition, Builder& builder);

/// A condition taken apart.
struct ConditionParts {
    Span span;
    ConditionState state;
    std::vector<ConditionPtr> children;
};

/// Makes a condition again from its kind and its parts; null when there is no such kind.
/// Throws std::bad_variant_access when the state is that of another kind.
ConditionPtr restore_condition(std::string_view kind, ConditionParts parts);

/// The kinds that can be restored, by `Condition::kind()`, in an order of their own.
std::vector<std::string_view> restorable_kinds();

/// "a, b and c".
std::string list_in_words(std::vector<std::string> const& parts, std::string_view conjunction);

}  // namespace asterism
