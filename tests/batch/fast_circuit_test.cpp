// SPDX-License-Identifier: MIT
/// Many lanes through gates of every kind against the engine's circuit, which evaluates one case:
/// random gates over the shipped book's facts, with weights, negations, thresholds that are never
/// and always reached, and nodes that are held.
#include "testing.h"

#include <random>
#include <set>

#include "batch/fast_circuit.h"
#include "oracle/small_books.h"
#include "oracle/subject.h"

namespace asterism::batch {

namespace {

constexpr std::size_t gates = 400;

class RandomBook {
public:
    explicit RandomBook(unsigned seed) : random_(seed), book_(oracle::shipped_book().compiled) {
        book_.circuit = Circuit();
        for (auto& fact : book_.facts) fact.node = book_.circuit.add_fact();
        for (NodeId node = 0; node < book_.circuit.size(); ++node) nodes_.push_back({node, false});
        for (std::size_t gate = 0; gate < gates; ++gate) nodes_.push_back(random_gate());
        ask_last_gates();
    }

    CompiledRulebook const& book() const { return book_; }
    /// The literal behind each answer.
    Literal asked(ServiceId service, Urgency urgency) const {
        return nodes_[nodes_.size() - 1 - service * FastCircuit::urgencies -
                      static_cast<std::size_t>(urgency)];
    }
    std::size_t number(std::size_t below) {
        return std::uniform_int_distribution<std::size_t>(0, below - 1)(random_);
    }

private:
    /// Late nodes are taken more often, so that gates stand over gates.
    Literal random_gate() {
        std::vector<Weighted> inputs;
        std::set<NodeId> taken;
        std::int64_t sum = 0;
        auto const size = 1 + number(9);
        auto const unit = static_cast<std::int64_t>(1 + number(3) * 9);
        for (std::size_t i = 0; i < size; ++i) {
            auto const near = std::min<std::size_t>(nodes_.size(), number(2) == 0 ? 30 : 2000);
            auto const node = nodes_[nodes_.size() - 1 - number(near)].node;
            if (!taken.insert(node).second) continue;
            inputs.push_back(
                {{node, number(4) == 0}, unit * static_cast<std::int64_t>(1 + number(12))});
            sum += inputs.back().weight;
        }
        auto const threshold = static_cast<std::int64_t>(number(static_cast<std::size_t>(sum) + 3));
        return book_.circuit.add_gate(threshold, inputs);
    }

    void ask_last_gates() {
        book_.rules.clear();
        book_.splits.clear();
        auto const services = static_cast<ServiceId>(book_.book->services.size());
        for (ServiceId service = 0; service < services; ++service) {
            for (std::uint32_t urgency = 0; urgency < FastCircuit::urgencies; ++urgency) {
                CompiledRule rule;
                rule.when.literal = asked(service, static_cast<Urgency>(urgency));
                rule.suggest.push_back({service, static_cast<Urgency>(urgency)});
                book_.rules.push_back(rule);
            }
        }
        // Named by a split, a node can be held.
        for (ServiceId service = 0; service < services; ++service) {
            auto const gate = asked(service, Urgency::urgent);
            auto const inputs = book_.circuit.inputs(gate.node);
            auto const held = inputs.empty() ? gate : inputs[number(inputs.size())].literal;
            book_.splits.push_back({gate, held});
        }
    }

    std::mt19937 random_;
    CompiledRulebook book_;
    std::vector<Literal> nodes_;
};

/// Facts of the fast circuit by their node in the book's.
std::vector<std::pair<NodeId, NodeId>> fact_pairs(CompiledRulebook const& book,
                                                  FastCircuit const& fast) {
    std::vector<std::pair<NodeId, NodeId>> pairs;
    auto const match = [&](Fact const& fact, auto const& list) {
        for (auto const& one : list) {
            if (one.kind == fact.kind && one.detail == fact.detail)
                pairs.emplace_back(fact.node, one.node);
        }
    };
    for (auto const& fact : book.facts) {
        if (fact.kind <= Fact::Kind::familial)
            match(fact, fast.facts_of(fact.index));
        else
            match(fact, fast.baby_facts());
    }
    return pairs;
}

}  // namespace

TEST_CASE("gates judge many lanes as the circuit judges one") {
    std::size_t compared = 0, unknown = 0, yes = 0;
    for (unsigned seed = 1; seed <= 12; ++seed) {
        RandomBook random(seed);
        auto const& book = random.book();
        FastCircuit const fast(book);
        auto const pairs = fact_pairs(book, fast);
        CHECK(pairs.size() > 20);
        std::vector<LaneTruth> lanes(fast.size());
        std::vector<std::vector<Truth>> alone(
            Lanes::count, std::vector<Truth>(book.circuit.size(), Truth::unknown));
        for (std::size_t lane = 0; lane < Lanes::count; ++lane) {
            for (auto const& [whole, here] : pairs) {
                alone[lane][whole] = static_cast<Truth>(random.number(3));
                lanes[here].put(lane, alone[lane][whole]);
            }
            book.circuit.evaluate(alone[lane]);
        }
        fast.evaluate(lanes);
        for (std::size_t lane = 0; lane < Lanes::count; ++lane) {
            for (ServiceId service = 0; service < fast.services(); ++service) {
                for (auto const urgency : {Urgency::routine, Urgency::emergency}) {
                    auto const wanted = value_of(random.asked(service, urgency), alone[lane]);
                    CHECK(lanes[fast.answer(service, urgency)].at(lane) == wanted);
                    ++compared;
                    unknown += wanted == Truth::unknown ? 1u : 0u;
                    yes += wanted == Truth::yes ? 1u : 0u;
                }
            }
        }
    }
    CHECK(unknown > compared / 20);
    CHECK(yes > compared / 20);
    CHECK(unknown + yes < compared * 9 / 10);
}

TEST_CASE("a node that is held has its value in its lanes alone") {
    RandomBook random(99);
    auto const& book = random.book();
    FastCircuit const fast(book);
    auto const pairs = fact_pairs(book, fast);
    std::vector<LaneTruth> lanes(fast.size());
    std::vector<Truth> alone(book.circuit.size(), Truth::unknown);
    for (auto const& [whole, here] : pairs) {
        alone[whole] = static_cast<Truth>(random.number(3));
        for (std::size_t lane = 0; lane < Lanes::count; ++lane) lanes[here].put(lane, alone[whole]);
    }
    // Three lanes a question: as it is, held at no, held at yes.
    std::vector<Hold> holds;
    auto const& splits = fast.splits();
    for (std::size_t i = 0; i < splits.size(); ++i) {
        Hold hold{splits[i].unless.node, {}, {}};
        hold.lanes.set(3 * i + 1);
        hold.lanes.set(3 * i + 2);
        hold.value.put(3 * i + 2, Truth::yes);
        auto const same = std::find_if(holds.begin(), holds.end(),
                                       [&](Hold const& h) { return h.node == hold.node; });
        if (same == holds.end()) {
            holds.push_back(hold);
        } else {
            same->lanes |= hold.lanes;
            same->value |= hold.value;
        }
    }
    std::sort(holds.begin(), holds.end(),
              [](Hold const& a, Hold const& b) { return a.node < b.node; });
    fast.evaluate(lanes, holds);
    std::size_t changed = 0;
    for (std::size_t i = 0; i < splits.size(); ++i) {
        for (std::size_t way = 0; way < 3; ++way) {
            auto values = alone;
            std::vector<std::pair<NodeId, Truth>> held;
            if (way > 0) held.emplace_back(book.splits[i].unless.node, truth(way == 2));
            book.circuit.evaluate(values, held);
            for (ServiceId service = 0; service < fast.services(); ++service) {
                auto const wanted = value_of(random.asked(service, Urgency::urgent), values);
                auto const& answer = lanes[fast.answer(service, Urgency::urgent)];
                CHECK(answer.at(3 * i + way) == wanted);
                changed += answer.at(3 * i + way) != answer.at(3 * i) ? 1u : 0u;
            }
        }
    }
    CHECK(changed > 0);
}

}  // namespace asterism::batch
