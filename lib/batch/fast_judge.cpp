// SPDX-License-Identifier: MIT
#include "batch/fast_judge.h"

#include <algorithm>
#include <bit>

#include "assess/facts.h"

namespace asterism::batch {

namespace {

/// As in `assess/verdicts.cpp`: every further open split doubles the work.
constexpr std::size_t most_splits = 4;
constexpr std::size_t sexes = 3;
/// Starts are of babies of this age; a baby that differs changes a fact or two.
constexpr Duration usual_age{36};
constexpr Gestation usual_gestation{280, 280};

bool known(Sex sex) { return sex == Sex::female || sex == Sex::male; }

std::optional<Urgency> urgency_of(std::uint8_t found) {
    return found == 0 ? std::nullopt : std::optional(static_cast<Urgency>(found - 1));
}

}  // namespace

ServiceAnswer FastJudge::Found::answer() const {
    ServiceAnswer result{verdict(), urgency_of(urgency), {}, {}};
    if (urgency != 0 && open > urgency) result.may_rise_to = urgency_of(open);
    return result;
}

FastJudge::FastJudge(FastBook const& book)
    : book_(book),
      run_(book.circuit()),
      states_(book),
      shared_states_(book),
      shared_(FastBook::starts * 2 * sexes),
      ways_(book.ontology().findings.size() * Touched::ways),
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
    number_ways();
    auto& shared = shared_by(baby, number);
    auto& start = start_of(baby, shared, Rest::unknown);
    evaluate(baby, start, Rest::unknown, now_);
    bool unsettled = false;
    for (ServiceId service = 0; service < now_.size(); ++service) {
        bool const same = now_[service] == start.found[service];
        answers_[service] = same ? start.answers[service] : now_[service].answer();
        unsettled = unsettled || answers_[service].verdict == Verdict::unsettled;
    }
    if (unsettled) add_rest(baby, shared);
    return answers_;
}

void FastJudge::add_rest(FastCase const& baby, Shared& shared) {
    evaluate(baby, start_of(baby, shared, Rest::normal), Rest::normal, rest_);
    for (ServiceId service = 0; service < now_.size(); ++service) {
        if (answers_[service].verdict != Verdict::unsettled) continue;
        answers_[service].if_rest_normal = rest_[service].verdict();
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

FastJudge::Shared& FastJudge::shared_by(FastCase const& baby, std::size_t number) {
    auto const sex = known(baby.sex) ? static_cast<std::size_t>(baby.sex) : 0;
    return shared_[(number * 2 + (baby.history_none ? 1 : 0)) * sexes + sex];
}

FastJudge::Start& FastJudge::start_of(FastCase const& baby, Shared& shared, Rest rest) {
    auto& start = shared[rest == Rest::normal ? 1 : 0];
    if (!start) start = make_start(baby, rest);
    return *start;
}

/// What babies like this one share.
FastCase& FastJudge::without_findings(FastCase const& baby) {
    auto& plain = shared_case_;
    plain.sex = baby.sex;
    plain.history_none = baby.history_none;
    plain.gestation = usual_gestation;
    plain.age = usual_age;
    plain.steps = book_.steps(book_.nearest(baby));
    plain.statements.clear();
    return plain;
}

std::unique_ptr<FastJudge::Start> FastJudge::make_start(FastCase const& baby, Rest rest) {
    auto const number = book_.nearest(baby);
    auto const& plain = without_findings(baby);
    shared_states_.start(plain, number);
    std::unique_ptr<Start> start(new Start{RunState(book_.snapshot(number, rest)), {}, {}, {}, {}});
    start->by_step.resize(book_.ontology().steps.size());
    run_.begin(start->state);
    FactValues const value(book_, plain, shared_states_, tests_, rest);
    set_findings(shared_states_, value);
    for (auto const& fact : book_.circuit().age_facts()) run_.set(fact.node, value.of_baby(fact));
    run_.settle();
    run_.keep();
    for (ServiceId service = 0; service < now_.size(); ++service) {
        start->found.push_back(read(service));
        start->answers.push_back(start->found.back().answer());
    }
    return start;
}

ChangeLists::Place FastJudge::change_of(FastCase const& baby, Start& start, StepId step,
                                        Rest rest) {
    auto& place = start.by_step[step];
    if (place != 0) return place;
    auto& plain = without_findings(baby);
    plain.steps.flip(step);
    shared_states_.step(plain, step);
    return place = make_change(plain, start, step, rest);
}

ChangeLists::Place FastJudge::change_by(FastCase const& baby, Start& start, FindingId id,
                                        Rest rest) {
    auto const way = ways_[id * Touched::ways + states_.of(id).way];
    if (start.by_way.size() <= way) start.by_way.resize(ways_seen_ + 1u);
    auto& place = start.by_way[way];
    if (place != 0) return place;
    auto& plain = without_findings(baby);
    for (auto const& statement : baby.statements) {
        if (statement.finding == id) plain.statements.push_back(statement);
    }
    shared_states_.statements(plain);
    return place = make_change(plain, start, book_.brief(id).step, rest);
}

ChangeLists::Place FastJudge::make_change(FastCase const& plain, Start& start, StepId step,
                                          Rest rest) {
    FactValues const value(book_, plain, shared_states_, tests_, rest);
    std::vector<std::pair<NodeId, Truth>> values;
    for (auto const id : shared_states_.touched()) {
        for (auto const& fact : book_.circuit().facts_of(id))
            values.emplace_back(fact.node, value.of_finding(id, fact));
    }
    return changes_.add(step_change(book_.circuit(), start.state, step, values));
}

/// Numbers the ways in which findings stand alone.
void FastJudge::number_ways() {
    for (auto const id : states_.alone()) {
        auto& way = ways_[id * Touched::ways + states_.of(id).way];
        if (way == 0) way = ++ways_seen_;
    }
}

void FastJudge::evaluate(FastCase const& baby, Start& start, Rest rest, std::vector<Found>& found) {
    run_.begin(start.state);
    for (auto const step : states_.steps())
        changes_.apply(change_of(baby, start, step, rest), run_);
    for (auto const id : states_.alone()) changes_.apply(change_by(baby, start, id, rest), run_);
    set_facts(baby, rest);
    run_.settle();
    read_changed(start, found);
    settle_splits(start, found);
    run_.reset();
}

void FastJudge::read_changed(Start const& start, std::vector<Found>& found) const {
    std::copy(start.found.begin(), start.found.end(), found.begin());
    for (auto changed = run_.changed_services(); changed != 0; changed &= changed - 1) {
        auto const bit = static_cast<ServiceId>(std::countr_zero(changed));
        found[bit] = read(bit);
        if (bit + 1 < FastCircuit::most_bits) continue;
        for (auto more = bit + 1; more < found.size(); ++more) found[more] = read(more);
    }
}

void FastJudge::set_findings(OwnStates const& states, FactValues const& value) {
    for (auto const id : states.touched()) {
        if (!value.may_differ(id)) continue;
        for (auto const& fact : book_.circuit().facts_of(id))
            run_.set(fact.node, value.of_finding(id, fact));
    }
}

void FastJudge::set_facts(FastCase const& baby, Rest rest) {
    FactValues const value(book_, baby, states_, tests_, rest);
    set_findings(states_, value);
    for (auto const& fact : book_.circuit().age_facts()) run_.set(fact.node, value.of_baby(fact));
    if (baby.measures.empty()) return;
    for (auto const& fact : book_.circuit().measure_facts())
        run_.set(fact.node, value.of_baby(fact));
}

/// Above the highest urgency that some rule gives, a gate of answers is `unknown` exactly when an
/// open rule would give it.
FastJudge::Found FastJudge::read(ServiceId service) const {
    Found found;
    for (auto urgency :
         {Urgency::emergency, Urgency::same_day, Urgency::urgent, Urgency::routine}) {
        auto const value = run_.value(book_.circuit().answer(service, urgency));
        auto const code = static_cast<std::uint8_t>(static_cast<int>(urgency) + 1);
        if (value == Truth::unknown && found.open == 0) found.open = code;
        if (value != Truth::yes) continue;
        found.urgency = code;
        return found;
    }
    return found;
}

void FastJudge::settle_splits(Start& start, std::vector<Found>& found) {
    open_ = run_.open_splits();
    if (open_.empty() || open_.size() > most_splits) return;
    for (unsigned branch = 0; branch < (1u << open_.size()); ++branch) {
        for (std::size_t i = 0; i < open_.size(); ++i) {
            bool const yes = ((branch >> i & 1u) != 0) != open_[i].negated;
            run_.hold(open_[i].node, truth(yes));
        }
        run_.settle();
        take_branch(start, branch == 0);
    }
    for (std::size_t i = 0; i < found.size(); ++i) {
        found[i].urgency = std::max(found[i].urgency, common_[i]);
    }
}

void FastJudge::take_branch(Start const& start, bool first) {
    read_changed(start, branch_);
    for (ServiceId service = 0; service < common_.size(); ++service) {
        auto& common = common_[service];
        auto const urgency = branch_[service].urgency;
        common = first ? urgency : std::min(common, urgency);
    }
}

Answers engine_answers(CompiledRulebook const& book, Case const& baby) {
    auto const now = verdicts(book, evaluate(book, baby, Rest::unknown).values);
    auto const rest = verdicts(book, evaluate(book, baby, Rest::normal).values);
    Answers answers;
    for (std::size_t i = 0; i < now.size(); ++i) {
        auto const& found = now[i];
        answers.push_back({found.verdict, found.urgency, {}, {}});
        if (found.urgency && found.open_urgency > found.urgency)
            answers.back().may_rise_to = found.open_urgency;
        if (found.verdict == Verdict::unsettled) answers.back().if_rest_normal = rest[i].verdict;
    }
    return answers;
}

std::optional<Urgency> highest_urgency(Answers const& answers) {
    std::optional<Urgency> highest;
    for (auto const& answer : answers) highest = std::max(highest, answer.urgency);
    return highest;
}

}  // namespace asterism::batch
