// SPDX-License-Identifier: MIT
#include "batch/fast_circuit.h"

#include <algorithm>
#include <limits>
#include <numeric>

/// Two builds of a function, of which the processor at hand gets the one that it can run.
/// Sanitizers are not ready yet when that is found out.
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) && \
    !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)
#define ASTERISM_WIDE [[gnu::target_clones("avx2", "default"), gnu::flatten]]
#else
#define ASTERISM_WIDE
#endif

namespace asterism::batch {

namespace {

constexpr NodeId nowhere = std::numeric_limits<NodeId>::max();

bool about_a_finding(Fact::Kind kind) { return kind <= Fact::Kind::familial; }

bool suggests(CompiledRule const& rule, ServiceId service, Urgency urgency) {
    return std::any_of(rule.suggest.begin(), rule.suggest.end(),
                       [&](auto const& s) { return s.service == service && s.urgency == urgency; });
}

}  // namespace

class FastCircuitMaker {
public:
    FastCircuitMaker(CompiledRulebook const& book, FastCircuit& result)
        : book_(book), result_(result) {}

    void make() {
        mark_needed();
        number(true);
        result_.first_gate_ = size_;
        number(false);
        add_gates();
        add_answers();
        add_facts();
        for (auto const& split : book_.splits)
            result_.splits_.push_back({here(split.counted), here(split.unless)});
    }

private:
    using Gate = FastCircuit::Gate;
    using Inputs = std::vector<Weighted>;

    /// Gates stand after their inputs, so one pass from the end reaches all that is needed.
    void mark_needed() {
        needed_.assign(book_.circuit.size(), false);
        for (auto const& rule : book_.rules) needed_[rule.when.literal.node] = true;
        for (auto const& split : book_.splits)
            needed_[split.counted.node] = needed_[split.unless.node] = true;
        for (auto node = static_cast<NodeId>(book_.circuit.size()); node-- > 0;) {
            if (!needed_[node] || book_.circuit.is_fact(node)) continue;
            for (auto const& input : book_.circuit.inputs(node)) needed_[input.literal.node] = true;
        }
        new_of_.assign(needed_.size(), nowhere);
    }

    void number(bool facts) {
        for (NodeId node = 0; node < needed_.size(); ++node) {
            if (needed_[node] && book_.circuit.is_fact(node) == facts) new_of_[node] = size_++;
        }
    }

    Literal here(Literal literal) const { return {new_of_[literal.node], literal.negated}; }

    void add_gates() {
        for (NodeId node = 0; node < needed_.size(); ++node) {
            if (!needed_[node] || book_.circuit.is_fact(node)) continue;
            auto const inputs = book_.circuit.inputs(node);
            add_gate(book_.circuit.threshold(node), {inputs.begin(), inputs.end()});
        }
    }

    void add_gate(std::int64_t threshold, Inputs const& inputs) {
        std::int64_t sum = 0, unit = 0;
        auto least = std::numeric_limits<std::int64_t>::max();
        for (auto const& [literal, weight] : inputs) {
            sum += weight;
            unit = std::gcd(unit, weight);
            least = std::min(least, weight);
        }
        Gate gate;
        gate.begin = gate.negated = gate.end = static_cast<std::uint32_t>(result_.inputs_.size());
        if (threshold <= 0 || threshold > sum - least) gate.kind = Gate::Kind::all;
        if (threshold > least && threshold <= sum - least) gate.kind = Gate::Kind::count;
        // Without inputs, `all` is always true and `any` never.
        if (threshold > sum) gate.kind = Gate::Kind::any;
        if (threshold > 0 && threshold <= sum) {
            gate.threshold = static_cast<std::uint32_t>((threshold + unit - 1) / unit);
            add_inputs(inputs, unit, gate);
        }
        result_.gates_.push_back(gate);
    }

    void add_inputs(Inputs const& inputs, std::int64_t unit, Gate& gate) {
        for (bool const negated : {false, true}) {
            for (auto const& [literal, weight] : inputs) {
                if (literal.negated != negated) continue;
                result_.inputs_.push_back(
                    {new_of_[literal.node], static_cast<std::uint32_t>(weight / unit)});
            }
            (negated ? gate.end : gate.negated) =
                static_cast<std::uint32_t>(result_.inputs_.size());
        }
    }

    void add_answers() {
        result_.first_answer_ = size_;
        result_.services_ = book_.book->services.size();
        for (ServiceId service = 0; service < result_.services_; ++service) {
            for (std::uint32_t urgency = 0; urgency < FastCircuit::urgencies; ++urgency)
                add_answer(service, static_cast<Urgency>(urgency));
        }
    }

    /// A gate that no rule feeds is always `no`.
    void add_answer(ServiceId service, Urgency urgency) {
        Inputs rules;
        for (auto const& rule : book_.rules) {
            if (suggests(rule, service, urgency)) rules.push_back({rule.when.literal, 1});
        }
        add_gate(1, rules);
    }

    void add_facts() {
        std::vector<std::vector<FindingFact>> facts(book_.present.size());
        for (auto const& fact : book_.facts) {
            auto const node = new_of_[fact.node];
            if (node == nowhere) continue;
            if (about_a_finding(fact.kind))
                facts[fact.index].push_back({fact.kind, fact.detail, node});
            else
                result_.baby_facts_.push_back({fact.kind, fact.detail, node});
        }
        result_.finding_facts_ = Lists<FindingFact>(facts);
    }

    CompiledRulebook const& book_;
    FastCircuit& result_;
    std::vector<bool> needed_;
    std::vector<NodeId> new_of_;
    NodeId size_ = 0;
};

FastCircuit::FastCircuit(CompiledRulebook const& book) { FastCircuitMaker(book, *this).make(); }

ASTERISM_WIDE
void FastCircuit::evaluate(std::span<LaneTruth> values, std::span<Hold const> holds) const {
    auto hold = holds.begin();
    auto const apply = [&](NodeId node) { values[node].replace(hold->lanes, hold->value), ++hold; };
    while (hold != holds.end() && hold->node < first_gate_) apply(hold->node);
    auto node = first_gate_;
    for (auto const& gate : gates_) {
        values[node] = evaluate(gate, values);
        if (hold != holds.end() && hold->node == node) apply(node);
        ++node;
    }
}

LaneTruth FastCircuit::evaluate(Gate const& gate, std::span<LaneTruth const> values) const {
    switch (gate.kind) {
        case Gate::Kind::all: return all(gate, values);
        case Gate::Kind::count: return count(gate, values);
        default: return any(gate, values);
    }
}

LaneTruth FastCircuit::any(Gate const& gate, std::span<LaneTruth const> values) const {
    LaneTruth result;
    for (auto i = gate.begin; i < gate.negated; ++i) result |= values[inputs_[i].node];
    for (auto i = gate.negated; i < gate.end; ++i) result |= !values[inputs_[i].node];
    return result;
}

LaneTruth FastCircuit::all(Gate const& gate, std::span<LaneTruth const> values) const {
    auto result = LaneTruth::all_yes();
    for (auto i = gate.begin; i < gate.negated; ++i) result &= values[inputs_[i].node];
    for (auto i = gate.negated; i < gate.end; ++i) result &= !values[inputs_[i].node];
    return result;
}

/// Counts in unary: `reached[n]` tells whether the weights so far make n + 1 or more, up to the
/// threshold, which is small in units of the weights' common divisor.
LaneTruth FastCircuit::count(Gate const& gate, std::span<LaneTruth const> values) const {
    static constexpr std::size_t usually_enough = 16;
    std::array<LaneTruth, usually_enough> few{};
    std::vector<LaneTruth> many(gate.threshold > few.size() ? gate.threshold : 0);
    auto const reached = many.empty() ? std::span(few).first(gate.threshold) : std::span(many);
    for (auto i = gate.begin; i < gate.end; ++i) {
        auto const [node, weight] = inputs_[i];
        auto const input = i < gate.negated ? values[node] : !values[node];
        for (std::size_t n = reached.size(); n-- > 0;)
            reached[n] |= n < weight ? input : reached[n - weight] & input;
    }
    return reached.back();
}

}  // namespace asterism::batch
