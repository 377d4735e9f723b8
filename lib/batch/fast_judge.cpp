// SPDX-License-Identifier: MIT
#include "batch/fast_judge.h"

#include <algorithm>
#include <bit>

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
      branch_(book.circuit().services()),
      common_(book.circuit().services()),
      answers_(book.circuit().services()) {}

Answers const& FastJudge::judge(FastCase const& baby) {
    auto const number = book_.nearest(baby);
    read_measures(baby);
    states_.work_out(baby, number, tests_);
    auto& start = start_of(number, Rest::unknown);
    evaluate(baby, start, Rest::unknown, now_);
    bool unsettled = false;
    for (ServiceId service = 0; service < now_.size(); ++service) {
        bool const same = now_[service] == start.found[service];
        answers_[service] =
            same ? start.answers[service] : answer_of(now_[service].urgency, now_[service].open);
        unsettled = unsettled || answers_[service].verdict == Verdict::unsettled;
    }
    if (unsettled) add_rest(baby, number);
    return answers_;
}

void FastJudge::add_rest(FastCase const& baby, std::size_t number) {
    evaluate(baby, start_of(number, Rest::normal), Rest::normal, rest_);
    for (ServiceId service = 0; service < now_.size(); ++service) {
        if (answers_[service].verdict != Verdict::unsettled) continue;
        answers_[service].if_rest_normal = verdict_of(rest_[service].urgency, rest_[service].open);
    }
}

/// Numbers go through the engine's own reading of them.
void FastJudge::read_measures(FastCase const& baby) {
    if (measured_) tests_.assign(tests_.size(), std::nullopt);
    measured_ = !baby.measures.empty();
    if (!measured_) return;
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

FastJudge::Start& FastJudge::start_of(std::size_t number, Rest rest) {
    auto& start = starts_[number * 2 + (rest == Rest::normal ? 1 : 0)];
    if (start) return *start;
    start.reset(new Start{{book_.circuit(), book_.snapshot(number, rest)}, {}, {}});
    for (ServiceId service = 0; service < now_.size(); ++service) {
        start->found.push_back(read(start->run, service));
        start->answers.push_back(answer_of(start->found.back().urgency, start->found.back().open));
    }
    return *start;
}

void FastJudge::evaluate(FastCase const& baby, Start& start, Rest rest, std::vector<Found>& found) {
    set_facts(baby, rest, start.run);
    start.run.settle();
    read_changed(start, found);
    settle_splits(start, found);
    start.run.reset();
}

void FastJudge::read_changed(Start const& start, std::vector<Found>& found) const {
    std::copy(start.found.begin(), start.found.end(), found.begin());
    for (auto changed = start.run.changed_services(); changed != 0; changed &= changed - 1) {
        auto const bit = static_cast<ServiceId>(std::countr_zero(changed));
        found[bit] = read(start.run, bit);
        if (bit + 1 < FastCircuit::most_bits) continue;
        for (auto more = bit + 1; more < found.size(); ++more) found[more] = read(start.run, more);
    }
}

void FastJudge::set_facts(FastCase const& baby, Rest rest, FastRun& run) const {
    FactValues const value(book_, baby, states_, tests_, rest);
    for (auto const id : states_.touched()) {
        if (!value.may_differ(id)) continue;
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

void FastJudge::settle_splits(Start& start, std::vector<Found>& found) {
    open_ = start.run.open_splits();
    if (open_.empty() || open_.size() > most_splits) return;
    for (unsigned branch = 0; branch < (1u << open_.size()); ++branch) {
        for (std::size_t i = 0; i < open_.size(); ++i) {
            bool const yes = ((branch >> i & 1u) != 0) != open_[i].negated;
            start.run.hold(open_[i].node, truth(yes));
        }
        start.run.settle();
        take_branch(start, branch == 0);
    }
    for (std::size_t i = 0; i < found.size(); ++i) {
        auto& urgency = found[i].urgency;
        if (common_[i] && (!urgency || *urgency < *common_[i])) urgency = common_[i];
    }
}

void FastJudge::take_branch(Start const& start, bool first) {
    read_changed(start, branch_);
    for (ServiceId service = 0; service < common_.size(); ++service) {
        auto& common = common_[service];
        auto const urgency = branch_[service].urgency;
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
