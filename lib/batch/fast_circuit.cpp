// SPDX-License-Identifier: MIT
#include "batch/fast_circuit.h"

#include <algorithm>
#include <limits>

namespace asterism::batch {

namespace {

constexpr NodeId nowhere = std::numeric_limits<NodeId>::max();
/// Margins are sums of weights less a threshold.
constexpr std::int64_t most_sum = INT16_MAX / 2;

bool about_a_finding(Fact::Kind kind) { return kind <= Fact::Kind::familial; }

}  // namespace

class FastCircuitMaker {
public:
    explicit FastCircuitMaker(CompiledRulebook const& book) : book_(book) {}

    std::optional<FastCircuit> make() {
        mark_needed();
        number();
        add_gates();
        add_answers();
        if (!fits_) return std::nullopt;
        add_edges();
        add_facts();
        add_splits();
        add_steps();
        return std::move(result_);
    }

private:
    /// Gates stand after their inputs, so one pass from the end reaches all that is needed.
    void mark_needed() {
        needed_.assign(book_.circuit.size(), false);
        for (auto const& rule : book_.rules) needed_[rule.when.literal.node] = true;
        for (auto const& split : book_.splits)
            needed_[split.counted.node] = needed_[split.unless.node] = true;
        for (auto node = book_.circuit.size(); node-- > 0;) {
            if (!needed_[node] || book_.circuit.is_fact(static_cast<NodeId>(node))) continue;
            for (auto const& input : book_.circuit.inputs(static_cast<NodeId>(node)))
                needed_[input.literal.node] = true;
        }
    }

    void number() {
        new_of_.assign(needed_.size(), nowhere);
        for (NodeId node = 0; node < needed_.size(); ++node) {
            if (!needed_[node]) continue;
            new_of_[node] = static_cast<NodeId>(result_.whole_of_.size());
            result_.whole_of_.push_back(node);
        }
    }

    Literal here(Literal literal) const { return {new_of_[literal.node], literal.negated}; }

    void add_gates() {
        for (NodeId node = 0; node < result_.whole_of_.size(); ++node) {
            auto const whole = result_.whole_of_[node];
            bool const fact = book_.circuit.is_fact(whole);
            add_threshold(fact ? 0 : book_.circuit.threshold(whole));
            if (fact) continue;
            std::int64_t total = 0;
            for (auto const& [literal, weight] : book_.circuit.inputs(whole)) {
                add_input(node, here(literal), weight);
                total += weight;
            }
            fits_ = fits_ && total < most_sum;
        }
    }

    void add_threshold(std::int64_t threshold) {
        fits_ = fits_ && threshold < most_sum && threshold > -most_sum;
        result_.thresholds_.push_back(threshold);
    }

    void add_input(NodeId gate, Literal literal, std::int64_t weight) {
        fits_ = fits_ && weight > 0 && weight < most_sum;
        result_.inputs_.push_back({gate, literal, static_cast<std::int32_t>(weight)});
    }

    /// A gate that no rule feeds has the threshold 1 and no input: it is always `no`.
    void add_answers() {
        result_.first_answer_ = static_cast<NodeId>(result_.whole_of_.size());
        result_.services_ = book_.book->services.size();
        for (ServiceId service = 0; service < result_.services_; ++service) {
            for (std::uint32_t urgency = 0; urgency < FastCircuit::urgencies; ++urgency) {
                add_answer(service, static_cast<Urgency>(urgency));
            }
        }
    }

    void add_answer(ServiceId service, Urgency urgency) {
        auto const gate = static_cast<NodeId>(result_.thresholds_.size());
        add_threshold(1);
        std::int64_t rules = 0;
        for (auto const& rule : book_.rules) {
            if (!suggests(rule, service, urgency)) continue;
            add_input(gate, here(rule.when.literal), 1);
            ++rules;
        }
        fits_ = fits_ && rules < most_sum;
    }

    static bool suggests(CompiledRule const& rule, ServiceId service, Urgency urgency) {
        return std::any_of(rule.suggest.begin(), rule.suggest.end(), [&](auto const& s) {
            return s.service == service && s.urgency == urgency;
        });
    }

    void add_edges() {
        std::vector<std::vector<Edge>> edges(result_.thresholds_.size());
        for (auto const& [gate, literal, weight] : result_.inputs_)
            edges[literal.node].push_back({gate, literal.negated ? -weight : weight});
        std::vector<std::vector<EdgePair>> pairs(edges.size());
        for (std::size_t node = 0; node < edges.size(); ++node) {
            auto& list = edges[node];
            if (list.size() % 2 == 1) list.push_back({result_.nowhere(), 0});
            for (std::size_t i = 0; i < list.size(); i += 2)
                pairs[node].push_back({list[i], list[i + 1]});
        }
        result_.edges_ = Lists<EdgePair>(pairs);
    }

    void add_facts() {
        std::vector<std::vector<FindingFact>> facts(book_.present.size());
        for (auto const& fact : book_.facts) {
            auto const node = new_of_[fact.node];
            if (node == nowhere) continue;
            bool const of_age = fact.kind >= Fact::Kind::age;
            if (about_a_finding(fact.kind)) {
                facts[fact.index].push_back({fact.kind, fact.detail, node});
            } else {
                auto& list = of_age ? result_.age_facts_ : result_.measure_facts_;
                list.push_back({fact.kind, fact.detail, node});
            }
        }
        result_.finding_facts_ = Lists<FindingFact>(facts);
    }

    void add_splits() {
        std::vector<std::vector<Split>> splits(result_.thresholds_.size());
        result_.counts_.assign(splits.size(), 0);
        for (auto const& split : book_.splits) {
            Split const mine{here(split.counted), here(split.unless)};
            splits[mine.counted.node].push_back(mine);
            result_.counts_[mine.counted.node] = 1;
        }
        result_.splits_ = Lists<Split>(splits);
    }

    /// Gates stand after their inputs, so one pass from the start tells on what each hangs.
    void add_steps() {
        static constexpr auto unseen = static_cast<StepId>(FastCircuit::no_step - 1);
        auto& steps = result_.step_of_;
        steps.assign(result_.thresholds_.size(), unseen);
        for (auto const& fact : book_.facts) {
            auto const node = new_of_[fact.node];
            if (node == nowhere) continue;
            steps[node] = about_a_finding(fact.kind) ? book_.ontology->at(fact.index).step
                                                     : FastCircuit::no_step;
        }
        mark_asked();
        for (auto const& [gate, literal, weight] : result_.inputs_) {
            auto const step = steps[literal.node];
            if (steps[gate] == unseen) steps[gate] = step;
            if (steps[gate] != step) steps[gate] = FastCircuit::no_step;
        }
        std::vector<std::vector<NodeId>> gates(book_.ontology->steps.size());
        for (NodeId node = 0; node < result_.first_answer_; ++node) {
            bool const fact = book_.circuit.is_fact(result_.whole_of_[node]);
            if (!fact && steps[node] < gates.size()) gates[steps[node]].push_back(node);
        }
        result_.own_gates_ = Lists<NodeId>(gates);
    }

    void mark_asked() {
        auto& steps = result_.step_of_;
        std::fill(steps.begin() + result_.first_answer_, steps.end(), FastCircuit::no_step);
        for (auto const& split : book_.splits) {
            for (auto const node : {split.counted.node, split.unless.node})
                steps[new_of_[node]] = FastCircuit::no_step;
        }
    }

    CompiledRulebook const& book_;
    FastCircuit result_;
    std::vector<bool> needed_;
    std::vector<NodeId> new_of_;
    bool fits_ = true;
};

std::optional<FastCircuit> FastCircuit::make(CompiledRulebook const& book) {
    return FastCircuitMaker(book).make();
}

FastCircuit::Snapshot FastCircuit::snapshot(std::span<Truth const> whole) const {
    Snapshot result;
    result.values.assign(size(), Truth::no);
    result.margins.resize(size());
    for (NodeId node = 0; node < first_answer_; ++node)
        result.values[node] = whole[whole_of_[node]];
    for (NodeId node = 0; node < size(); ++node) {
        auto const below = static_cast<int>(-thresholds_[node]);
        result.margins[node] = Margin(below, below);
    }
    for (auto const& [gate, literal, weight] : inputs_) {
        auto const value = value_of(literal, result.values);
        result.margins[gate] +=
            Margin(value == Truth::yes ? weight : 0, value != Truth::no ? weight : 0);
    }
    for (auto node = first_answer_; node < size(); ++node)
        result.values[node] = result.margins[node].truth();
    for (NodeId node = 0; node < size(); ++node) {
        for (auto const& split : splits_[node]) {
            if (value_of(split.counted, result.values) == Truth::yes)
                result.counting.push_back(node);
        }
    }
    return result;
}

}  // namespace asterism::batch
