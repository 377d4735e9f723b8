// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <array>
#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <vector>

#include "compile/compiled.h"

namespace asterism::batch {

/// How far a gate is from being `yes` (`low`: weight of its `yes` inputs less its threshold) and
/// from being `no` (`high`: the same with the unknown ones; never below `low`). Both are counters
/// of 16 bits in one number, so that a change of an input is one addition.
class Margin {
public:
    constexpr Margin() = default;
    constexpr Margin(int low, int high) : sum_(low + high * one_high) {}
    static constexpr Margin from_bits(std::uint32_t bits) {
        Margin result;
        result.sum_ = static_cast<std::int32_t>(bits);
        return result;
    }
    constexpr std::uint32_t bits() const { return static_cast<std::uint32_t>(sum_); }

    constexpr Truth truth() const {
        bool const low = static_cast<std::int16_t>(sum_) >= 0;
        bool const high = sum_ >= -one_high / 2;
        return static_cast<Truth>((low ? 1 : 0) + (high ? 1 : 0));
    }
    constexpr Margin& operator+=(Margin other) { return sum_ += other.sum_, *this; }
    friend constexpr Margin operator+(Margin a, Margin b) { return a += b; }
    friend constexpr Margin operator-(Margin a, Margin b) { return a.sum_ -= b.sum_, a; }
    friend constexpr Margin operator*(int weight, Margin a) { return a.sum_ *= weight, a; }
    friend constexpr bool operator==(Margin, Margin) = default;

private:
    static constexpr std::int32_t one_high = 1 << 16;
    std::int32_t sum_ = 0;
};

/// A way along which a node passes its changes on.
struct Edge {
    std::uint32_t gate = 0;
    std::int32_t weight = 0;  ///< negative where the gate takes the node's negation
};

using EdgePair = std::array<Edge, 2>;

/// A node's change from one value to another, as the gates that it feeds see it.
class Turn {
public:
    Turn(Truth from, Truth to) {
        int const yes = is(to, Truth::yes) - is(from, Truth::yes);
        int const no = is(to, Truth::no) - is(from, Truth::no);
        plain_ = Margin(yes, -no);
        // Not `no` is `yes` of the negation the other way round.
        negated_ = Margin(-no, yes);
    }
    bool any() const { return plain_ != Margin{}; }
    /// What is added to the margin of the gate at the end of an edge.
    Margin along(Edge const& edge) const {
        return edge.weight * (edge.weight > 0 ? plain_ : negated_);
    }

private:
    static int is(Truth value, Truth wanted) { return value == wanted ? 1 : 0; }

    Margin plain_;
    Margin negated_;
};

/// A fact of the circuit that says something of one finding.
struct FindingFact {
    Fact::Kind kind = Fact::Kind::finding;
    std::uint32_t detail = 0;
    NodeId node = 0;
};

/// A fact that says something of the whole baby: a measure's test, the sex, or a range of age or
/// gestation.
struct BabyFact {
    Fact::Kind kind = Fact::Kind::age;
    std::uint32_t detail = 0;
    NodeId node = 0;
};

/// Lists of T by index, in one array.
template <class T>
class Lists {
public:
    explicit Lists(std::vector<std::vector<T>> const& lists) {
        begin_.push_back(0);
        for (auto const& list : lists) {
            items_.insert(items_.end(), list.begin(), list.end());
            begin_.push_back(static_cast<std::uint32_t>(items_.size()));
        }
    }
    std::span<T const> operator[](std::size_t index) const {
        return std::span(items_).subspan(begin_[index], begin_[index + 1] - begin_[index]);
    }

private:
    std::vector<T> items_;
    std::vector<std::uint32_t> begin_;
};

/// The part of a book's circuit on which verdicts hang, made for change instead of for one pass:
/// each node knows the gates that it feeds. Nodes keep their order, so a gate still stands after
/// its inputs. The last nodes are *answers*: one gate a service and urgency over the rules that
/// suggest it.
class FastCircuit {
public:
    /// Nothing when a sum of weights is too large for 16 bits; books count in tenths of points.
    static std::optional<FastCircuit> make(CompiledRulebook const& book);

    std::size_t size() const { return thresholds_.size(); }
    std::size_t services() const { return services_; }
    /// Two at a time; an odd one is followed by an edge of no weight to `nowhere`.
    std::span<EdgePair const> edges(NodeId node) const { return edges_[node]; }
    NodeId nowhere() const { return static_cast<NodeId>(size()); }
    std::span<FindingFact const> facts_of(FindingId finding) const {
        return finding_facts_[finding];
    }
    /// Of sex, age and gestation.
    std::vector<BabyFact> const& age_facts() const { return age_facts_; }
    std::vector<BabyFact> const& measure_facts() const { return measure_facts_; }
    /// The questions on which a count hangs when this node counts; see Split.
    std::span<Split const> splits_of(NodeId counted) const { return splits_[counted]; }
    bool counts(NodeId node) const { return counts_[node] != 0; }
    /// The exam step on whose findings alone a node hangs; `no_step` when there is none, or when
    /// the node itself is asked for: answers and what splits name.
    StepId step_of(NodeId node) const { return step_of_[node]; }
    /// The gates of which that step is this one, in order.
    std::span<NodeId const> own_gates(StepId step) const { return own_gates_[step]; }
    /// The node that tells whether any rule suggests the service with this urgency.
    NodeId answer(ServiceId service, Urgency urgency) const {
        return first_answer_ + service * urgencies + static_cast<NodeId>(urgency);
    }
    NodeId first_answer() const { return first_answer_; }
    /// The service of an answer as a bit of a set; all of them share the last bit from the 64th on.
    std::uint64_t service_bit(NodeId answer) const {
        return 1ull << std::min((answer - first_answer_) / urgencies, most_bits - 1);
    }

    /// Values and margins of every node here from the values of the book's whole circuit.
    struct Snapshot {
        std::vector<Truth> values;
        std::vector<Margin> margins;
        std::vector<NodeId> counting;  ///< counted nodes of splits that are `yes`
    };
    Snapshot snapshot(std::span<Truth const> whole) const;

    static constexpr StepId no_step = std::numeric_limits<StepId>::max();
    static constexpr std::uint32_t urgencies = 4;
    static constexpr std::uint32_t most_bits = 64;

private:
    friend class FastCircuitMaker;
    FastCircuit() : edges_({}), finding_facts_({}), splits_({}), own_gates_({}) {}

    struct Input {
        NodeId gate = 0;
        Literal literal;
        std::int32_t weight = 1;
    };

    std::vector<std::int64_t> thresholds_;
    std::vector<NodeId> whole_of_;  ///< the node of the book's circuit; none for answers
    std::vector<Input> inputs_;     ///< ordered by gate
    Lists<EdgePair> edges_;
    Lists<FindingFact> finding_facts_;
    std::vector<BabyFact> age_facts_;
    std::vector<BabyFact> measure_facts_;
    Lists<Split> splits_;
    std::vector<std::uint8_t> counts_;
    std::vector<StepId> step_of_;
    Lists<NodeId> own_gates_;
    NodeId first_answer_ = 0;
    std::size_t services_ = 0;
};

}  // namespace asterism::batch
