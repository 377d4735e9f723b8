// SPDX-License-Identifier: MIT
#include "assess/open_questions.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "assess/evidence.h"
#include "assess/grouped.h"
#include "assess/verdicts.h"

namespace asterism {

namespace {

/// The facts of the circuit by node, so that a walk down can tell what it reached.
std::vector<Fact const*> facts_by_node(CompiledRulebook const& book) {
    std::vector<Fact const*> result(book.circuit.size());
    for (auto const& fact : book.facts) result[fact.node] = &fact;
    return result;
}

bool is_finding_fact(Fact::Kind kind) {
    return kind == Fact::Kind::finding || kind == Fact::Kind::left || kind == Fact::Kind::right ||
           kind == Fact::Kind::grade;
}

std::string fact_name(CompiledRulebook const& book, Fact const& fact) {
    switch (fact.kind) {
        case Fact::Kind::female:
        case Fact::Kind::male: return "sex";
        case Fact::Kind::age: return "age";
        case Fact::Kind::gestation: return "gestation";
        case Fact::Kind::measure:
        case Fact::Kind::measure_by_eye:
        case Fact::Kind::measure_red_flag: return book.ontology->measures[fact.index].label;
        default: return book.ontology->at(fact.index).label;
    }
}

StepToDo to_do(Ontology const& ontology, StepId id) {
    auto const& step = ontology.steps[id];
    return {step.id.text, step.label, ontology.regions[step.region].label, step.essential, 0, 0};
}

class Walk {
public:
    Walk(CompiledRulebook const& book, CaseFacts const& facts)
        : book_(book), facts_(facts), by_node_(facts_by_node(book)) {}

    void from(Literal literal) {
        seen_.assign(book_.circuit.size(), false);
        steps_here_.clear();
        down(literal.node);
        for (auto const step : steps_here_) ++rules_[step];
    }

    OpenQuestions result() const {
        std::vector<std::tuple<bool, int, StepId>> order;
        for (auto const& [step, rules] : rules_)
            order.emplace_back(!book_.ontology->steps[step].essential, -rules, step);
        std::sort(order.begin(), order.end());
        OpenQuestions questions;
        for (auto const& [inessential, rules, step] : order) {
            questions.steps.push_back(to_do(*book_.ontology, step));
            questions.steps.back().rules = -rules;
            questions.steps.back().findings = static_cast<int>(findings_.at(step).size());
        }
        questions.facts.assign(names_.begin(), names_.end());
        return questions;
    }

private:
    void down(NodeId node) {
        if (facts_.values[node] != Truth::unknown || seen_[node]) return;
        seen_[node] = true;
        if (auto const* fact = by_node_[node]) return reach(*fact);
        for (auto const& input : book_.circuit.inputs(node)) down(input.literal.node);
    }

    void reach(Fact const& fact) {
        bool const examined =
            is_finding_fact(fact.kind) && !book_.ontology->frame(fact.index).history;
        bool const detail_missing =
            examined && facts_.states[fact.index].origin == Origin::stated_present;
        if (!examined || detail_missing) {
            names_.insert(detail_missing ? detail(fact) : fact_name(book_, fact));
            return;
        }
        auto const step = book_.ontology->frame(fact.index).step;
        steps_here_.insert(step);
        findings_[step].insert(fact.index);
    }

    std::string detail(Fact const& fact) const {
        return (fact.kind == Fact::Kind::grade ? "grade of " : "side of ") +
               book_.ontology->at(fact.index).label;
    }

    CompiledRulebook const& book_;
    CaseFacts const& facts_;
    std::vector<Fact const*> by_node_;
    std::vector<bool> seen_;
    std::set<StepId> steps_here_;
    std::map<StepId, int> rules_;
    std::map<StepId, std::set<FindingId>> findings_;
    std::set<std::string> names_;
};

bool same(std::vector<ServiceVerdict> const& a, std::vector<ServiceVerdict> const& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](ServiceVerdict const& x, ServiceVerdict const& y) {
                          return x.verdict == y.verdict && x.urgency == y.urgency;
                      });
}

/// The facts of each history item: present when it is.
Grouped<NodeId> facts_of_history(CompiledRulebook const& book) {
    return {book.ontology->findings.size(), [&](auto put) {
                for (auto const& fact : book.facts) {
                    bool const own = fact.kind == Fact::Kind::history_assumed ||
                                     fact.kind == Fact::Kind::finding;
                    if (own) put(fact.index, fact.node);
                }
            }};
}

/// The history items whose presence would change a verdict; the rest need not be asked for this
/// baby.
std::vector<std::string> telling_history(CompiledRulebook const& book, CaseFacts const& facts,
                                         CaseTrial& trial) {
    auto const now = trial.verdicts();
    auto const facts_of = facts_of_history(book);
    std::vector<std::string> labels;
    for (FindingId id = 0; id < book.ontology->findings.size(); ++id) {
        bool const open =
            facts.states[id].own == Truth::unknown && book.ontology->region_of(id).history;
        if (!open) continue;
        std::vector<std::pair<NodeId, Truth>> present;
        for (auto const node : facts_of.at(id)) present.emplace_back(node, Truth::yes);
        trial.apply(present);
        bool const tells = !trial.nothing_turned() && !same(now, trial.verdicts());
        if (tells) labels.push_back(book.ontology->at(id).label);
        trial.undo();
    }
    return labels;
}

}  // namespace

OpenQuestions open_questions(CompiledRulebook const& book, CaseFacts const& facts,
                             std::vector<Literal> const& open) {
    Walk walk(book, facts);
    for (auto const literal : open) walk.from(literal);
    return walk.result();
}

NotExamined not_examined(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts,
                         CaseTrial& trial) {
    NotExamined result;
    auto const& ontology = *book.ontology;
    for (StepId step = 0; step < ontology.steps.size(); ++step) {
        bool const examined =
            !ontology.steps[step].result && !ontology.regions[ontology.steps[step].region].history;
        if (baby.step_done[step] || !examined) continue;
        auto todo = to_do(ontology, step);
        for (FindingId id = 0; id < ontology.findings.size(); ++id) {
            todo.findings +=
                ontology.frame(id).step == step && facts.states[id].own == Truth::unknown;
        }
        if (todo.findings > 0) result.steps.push_back(std::move(todo));
    }
    std::stable_partition(result.steps.begin(), result.steps.end(),
                          [](StepToDo const& s) { return s.essential; });
    EvidenceReader const reader(book, baby, facts);
    for (auto const& statement : baby.unsure)
        result.unsure.push_back(reader.finding(statement.finding));
    result.history = telling_history(book, facts, trial);
    if (baby.sex == Sex::not_given || baby.sex == Sex::undetermined)
        result.facts.emplace_back("sex");
    if (!baby.gestation) result.facts.emplace_back("gestation");
    if (!baby.age) result.facts.emplace_back("age");
    return result;
}

}  // namespace asterism
