// SPDX-License-Identifier: MIT
#include "batch/fast_judge.h"

#include <algorithm>

#include "assess/facts.h"

namespace asterism::batch {

namespace {

/// As in `assess/verdicts.cpp`: every further open split doubles the work.
constexpr std::size_t most_splits = 4;

Verdict verdict_of(std::optional<Urgency> const& urgency, std::optional<Urgency> const& open) {
    return urgency ? Verdict::suggested : open ? Verdict::unsettled : Verdict::not_suggested;
}

ServiceAnswer answer_of(std::optional<Urgency> const& urgency, std::optional<Urgency> const& open) {
    ServiceAnswer answer{verdict_of(urgency, open), urgency, {}, {}};
    if (urgency && open && *open > *urgency) answer.may_rise_to = open;
    return answer;
}

}  // namespace

FastJudge::FastJudge(FastBook const& book)
    : book_(book),
      states_(book),
      tests_(book.whole().measure_tests.size()),
      now_(book.circuit().services()),
      rest_(book.circuit().services()),
      common_(book.circuit().services()),
      answers_(book.circuit().services()) {}

Answers const& FastJudge::judge(FastCase const& baby) {
    auto const start = book_.nearest(baby);
    read_measures(baby);
    states_.work_out(baby, start, tests_);
    evaluate(baby, start, Rest::unknown, now_);
    bool unsettled = false;
    for (ServiceId service = 0; service < now_.size(); ++service) {
        answers_[service] = answer_of(now_[service].urgency, now_[service].open);
        unsettled = unsettled || answers_[service].verdict == Verdict::unsettled;
    }
    if (!unsettled) return answers_;
    evaluate(baby, start, Rest::normal, rest_);
    for (ServiceId service = 0; service < now_.size(); ++service) {
        if (answers_[service].verdict != Verdict::unsettled) continue;
        answers_[service].if_rest_normal = verdict_of(rest_[service].urgency, rest_[service].open);
    }
    return answers_;
}

/// Numbers go through the engine's own reading of them.
void FastJudge::read_measures(FastCase const& baby) {
    if (baby.measures.empty()) {
        tests_.assign(tests_.size(), std::nullopt);
        return;
    }
    auto const& whole = book_.whole();
    Case measured;
    measured.sex = baby.sex;
    measured.gestation = baby.gestation;
    measured.age = baby.age;
    measured.measures = baby.measures;
    auto const readings = read_margins(*whole.ontology, *whole.standards, measured);
    for (std::size_t test = 0; test < tests_.size(); ++test)
        tests_[test] = value_of(whole.measure_tests[test], readings);
}

FastRun& FastJudge::run(std::size_t start, Rest rest) {
    auto& run = runs_[start * 2 + (rest == Rest::normal ? 1 : 0)];
    if (!run) run = std::make_unique<FastRun>(book_.circuit(), book_.snapshot(start, rest));
    return *run;
}

void FastJudge::evaluate(FastCase const& baby, std::size_t start, Rest rest,
                         std::vector<Found>& found) {
    auto& run = this->run(start, rest);
    set_facts(baby, rest, run);
    run.settle();
    for (ServiceId service = 0; service < found.size(); ++service)
        found[service] = read(run, service);
    settle_splits(run, found);
    run.reset();
}

void FastJudge::set_facts(FastCase const& baby, Rest rest, FastRun& run) const {
    FactValues const value(book_, baby, states_, tests_, rest);
    for (auto const id : states_.touched()) {
        for (auto const& fact : book_.circuit().facts_of(id))
            run.set(fact.node, value.of_finding(id, fact));
    }
    for (auto const& fact : book_.circuit().age_facts()) run.set(fact.node, value.of_baby(fact));
    if (baby.measures.empty()) return;
    for (auto const& fact : book_.circuit().measure_facts())
        run.set(fact.node, value.of_baby(fact));
}

/// Above the highest urgency that some rule gives, a gate of answers is `unknown` exactly when an
/// open rule would give it.
FastJudge::Found FastJudge::read(FastRun const& run, ServiceId service) const {
    Found found;
    for (auto urgency :
         {Urgency::emergency, Urgency::same_day, Urgency::urgent, Urgency::routine}) {
        auto const value = run.value(book_.circuit().answer(service, urgency));
        if (value == Truth::unknown && !found.open) found.open = urgency;
        if (value != Truth::yes) continue;
        found.urgency = urgency;
        return found;
    }
    return found;
}

void FastJudge::settle_splits(FastRun& run, std::vector<Found>& found) {
    open_ = run.open_splits();
    if (open_.empty() || open_.size() > most_splits) return;
    for (unsigned branch = 0; branch < (1u << open_.size()); ++branch) {
        for (std::size_t i = 0; i < open_.size(); ++i) {
            bool const yes = ((branch >> i & 1u) != 0) != open_[i].negated;
            run.hold(open_[i].node, truth(yes));
        }
        run.settle();
        take_branch(run, branch == 0);
    }
    for (std::size_t i = 0; i < found.size(); ++i) {
        auto& urgency = found[i].urgency;
        if (common_[i] && (!urgency || *urgency < *common_[i])) urgency = common_[i];
    }
}

void FastJudge::take_branch(FastRun const& run, bool first) {
    for (ServiceId service = 0; service < common_.size(); ++service) {
        auto& common = common_[service];
        auto const urgency = read(run, service).urgency;
        if (first) {
            common = urgency;
        } else {
            common = common && urgency ? std::optional(std::min(*common, *urgency)) : std::nullopt;
        }
    }
}

Answers engine_answers(CompiledRulebook const& book, Case const& baby) {
    auto const now = verdicts(book, evaluate(book, baby, Rest::unknown).values);
    auto const rest = verdicts(book, evaluate(book, baby, Rest::normal).values);
    Answers answers;
    for (std::size_t i = 0; i < now.size(); ++i) {
        answers.push_back(answer_of(now[i].urgency, now[i].open_urgency));
        if (now[i].verdict == Verdict::unsettled) answers.back().if_rest_normal = rest[i].verdict;
    }
    return answers;
}

std::optional<Urgency> highest_urgency(Answers const& answers) {
    std::optional<Urgency> highest;
    for (auto const& answer : answers) highest = std::max(highest, answer.urgency);
    return highest;
}

}  // namespace asterism::batch
