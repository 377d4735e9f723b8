// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <vector>

#include "batch/lanes.h"
#include "batch/lists.h"
#include "compile/compiled.h"

namespace asterism::batch {

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

/// A node, fact or gate, that has a given truth in some lanes whatever its inputs say.
struct Hold {
    NodeId node = 0;
    Lanes lanes;
    LaneTruth value;
};

/// The part of a book's circuit on which verdicts hang, made to judge many cases at once. Facts
/// stand first; a gate stands after its inputs. The last nodes are *answers*: one gate a service
/// and urgency over the rules that suggest it.
class FastCircuit {
public:
    explicit FastCircuit(CompiledRulebook const& book);

    std::size_t size() const { return first_gate_ + gates_.size(); }
    std::size_t services() const { return services_; }
    NodeId first_gate() const { return first_gate_; }
    std::span<FindingFact const> facts_of(FindingId finding) const {
        return finding_facts_[finding];
    }
    std::vector<BabyFact> const& baby_facts() const { return baby_facts_; }
    std::vector<Split> const& splits() const { return splits_; }
    /// The node that tells whether any rule suggests the service with this urgency.
    NodeId answer(ServiceId service, Urgency urgency) const {
        return first_answer_ + service * urgencies + static_cast<NodeId>(urgency);
    }

    /// Fills in every gate; `values` holds one truth a node, with the facts already set. `holds` in
    /// the order of their nodes, each node once.
    void evaluate(std::span<LaneTruth> values, std::span<Hold const> holds = {}) const;

    static constexpr std::uint32_t urgencies = 4;

private:
    friend class FastCircuitMaker;

    /// Inputs from `begin` to `negated` count as they are, those up to `end` negated.
    struct Gate {
        enum class Kind : std::uint8_t { any, all, count };
        Kind kind = Kind::any;
        std::uint32_t threshold = 0;  ///< of a count
        std::uint32_t begin = 0, negated = 0, end = 0;
    };
    struct Input {
        NodeId node = 0;
        std::uint32_t weight = 1;  ///< in a count
    };

    LaneTruth evaluate(Gate const& gate, std::span<LaneTruth const> values) const;
    LaneTruth any(Gate const& gate, std::span<LaneTruth const> values) const;
    LaneTruth all(Gate const& gate, std::span<LaneTruth const> values) const;
    LaneTruth count(Gate const& gate, std::span<LaneTruth const> values) const;

    NodeId first_gate_ = 0;
    NodeId first_answer_ = 0;
    std::size_t services_ = 0;
    std::vector<Gate> gates_;  ///< from `first_gate_` on
    std::vector<Input> inputs_;
    Lists<FindingFact> finding_facts_;
    std::vector<BabyFact> baby_facts_;
    std::vector<Split> splits_;
};

}  // namespace asterism::batch
