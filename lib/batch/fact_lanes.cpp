// SPDX-License-Identifier: MIT
#include "batch/fact_lanes.h"

#include <algorithm>

namespace asterism::batch {

namespace {

/// Ages and gestations up to here are looked up, others compared with each range.
constexpr std::size_t most_hours = 24 * 31;
constexpr std::size_t most_days = 7 * 46;

bool open_with_its_finding(Fact::Kind kind, bool told) {
    switch (kind) {
        case Fact::Kind::finding: return true;
        case Fact::Kind::left:
        case Fact::Kind::right:
        case Fact::Kind::grade: return !told;
        default: return false;
    }
}

}  // namespace

FactLanes::FactLanes(FastBook const& book)
    : book_(book),
      states_(book),
      tests_(book.whole().measure_tests.size()),
      values_(book.circuit().size()),
      done_(book.ontology().steps.size()) {
    for (FindingId id = 0; id < book.ontology().findings.size(); ++id) add_finding(id);
    open_.resize(groups_.size());
    add_ranges(ages_, Fact::Kind::age, most_hours);
    add_ranges(gestations_, Fact::Kind::gestation, most_days);
}

void FactLanes::add_finding(FindingId id) {
    auto const& finding = book_.brief(id);
    Group const group{finding.step, finding.sex, finding.history_region};
    for (auto const& fact : book_.circuit().facts_of(id)) {
        if (!open_with_its_finding(fact.kind, finding.told)) continue;
        auto const known = std::find(groups_.begin(), groups_.end(), group);
        open_facts_.push_back(
            {fact.node, static_cast<std::uint32_t>(known - groups_.begin()), finding.told});
        if (known == groups_.end()) groups_.push_back(group);
    }
}

void FactLanes::add_ranges(RangeFacts& ranges, Fact::Kind kind, std::size_t most) {
    for (auto const& fact : book_.circuit().baby_facts()) {
        if (fact.kind == kind) ranges.facts.push_back(fact);
    }
    std::vector<std::vector<NodeId>> true_at(most);
    for (std::size_t number = 0; number < most; ++number) {
        for (auto const& fact : ranges.facts) {
            auto const& range = book_.whole().ranges[fact.detail];
            auto const value = static_cast<double>(number);
            if (range.contains(value, value) == Truth::yes) true_at[number].push_back(fact.node);
        }
    }
    ranges.true_at = Lists<NodeId>(true_at);
}

std::span<LaneTruth> FactLanes::fill(std::span<Seat const> seats) {
    clear_lanes();
    for (std::size_t lane = 0; lane < seats.size(); ++lane) note_lane(lane, seats[lane]);
    fill_open();
    for (auto const& fact : book_.circuit().baby_facts()) fill_of_baby(fact);
    for (std::size_t lane = 0; lane < seats.size(); ++lane) put_lane(lane, seats[lane]);
    return values_;
}

void FactLanes::clear_lanes() {
    std::fill(done_.begin(), done_.end(), Lanes{});
    rest_unknown_ = whole_exam_ = female_ = male_ = history_none_ = no_age_ = no_gestation_ =
        Lanes{};
}

void FactLanes::note_lane(std::size_t lane, Seat const& seat) {
    auto const& baby = *seat.baby;
    if (seat.rest == Rest::unknown) rest_unknown_.set(lane);
    if (baby.sex == Sex::female) female_.set(lane);
    if (baby.sex == Sex::male) male_.set(lane);
    if (baby.history_none) history_none_.set(lane);
    if (!baby.age) no_age_.set(lane);
    if (!baby.gestation) no_gestation_.set(lane);
    note_steps(lane, baby.steps);
}

/// Most exams leave out little or nothing; then `done_` takes what is left out.
void FactLanes::note_steps(std::size_t lane, StepSet const& steps) {
    if (steps == book_.exam_steps()) return whole_exam_.set(lane);
    auto const left_out = steps.difference(book_.exam_steps());
    bool const nearly_all = left_out.size() < book_.exam_steps().size() / 2;
    if (nearly_all) whole_exam_.set(lane);
    (nearly_all ? left_out : steps).each([&](StepId step) { done_[step].set(lane); });
}

Lanes FactLanes::other_sex(Sex sex) const {
    if (sex == Sex::not_given) return {};
    return (sex == Sex::female ? Lanes{} : female_) | (sex == Sex::male ? Lanes{} : male_);
}

void FactLanes::fill_open() {
    for (std::size_t step = 0; step < done_.size(); ++step) {
        if (book_.exam_steps().has(static_cast<StepId>(step))) done_[step] ^= whole_exam_;
    }
    for (std::size_t i = 0; i < groups_.size(); ++i) {
        auto const& [step, sex, history_region] = groups_[i];
        open_[i] = ~(done_[step] | other_sex(sex) | (history_region ? history_none_ : Lanes{}));
    }
    std::fill_n(values_.begin(), book_.circuit().first_gate(), LaneTruth{});
    for (auto const& [node, group, told] : open_facts_)
        values_[node].possibly = told ? open_[group] : open_[group] & rest_unknown_;
}

void FactLanes::fill_of_baby(BabyFact const& fact) {
    LaneTruth value;
    switch (fact.kind) {
        case Fact::Kind::measure: value.possibly = rest_unknown_; break;
        case Fact::Kind::female: value = {female_, ~male_}; break;
        case Fact::Kind::male: value = {male_, ~female_}; break;
        case Fact::Kind::age: value.possibly = no_age_; break;
        case Fact::Kind::gestation: value.possibly = no_gestation_; break;
        default: break;
    }
    values_[fact.node] = value;
}

void FactLanes::put_lane(std::size_t lane, Seat const& seat) {
    auto const& baby = *seat.baby;
    read_measures(baby);
    states_.work_out(baby, tests_);
    FactValues const value(book_, baby, states_, tests_, seat.rest);
    for (auto const id : states_.touched()) {
        for (auto const& fact : book_.circuit().facts_of(id))
            values_[fact.node].put(lane, value.of_finding(id, fact));
    }
    if (!baby.measures.empty()) put_measures(lane, value);
    auto const hours = baby.age ? std::optional(baby.age->hours) : std::nullopt;
    auto const days = baby.gestation && baby.gestation->exact()
                          ? std::optional(baby.gestation->min_days)
                          : std::nullopt;
    if (baby.age) put_ranges(lane, ages_, hours, value);
    if (baby.gestation) put_ranges(lane, gestations_, days, value);
}

void FactLanes::put_ranges(std::size_t lane, RangeFacts const& ranges, std::optional<int> number,
                           FactValues const& value) {
    if (number && *number >= 0 && static_cast<std::size_t>(*number) < ranges.true_at.size()) {
        for (auto const node : ranges.true_at[static_cast<std::size_t>(*number)])
            values_[node].put(lane, Truth::yes);
        return;
    }
    for (auto const& fact : ranges.facts) values_[fact.node].put(lane, value.of_baby(fact));
}

void FactLanes::put_measures(std::size_t lane, FactValues const& value) {
    for (auto const& fact : book_.circuit().baby_facts()) {
        if (fact.kind < Fact::Kind::age) values_[fact.node].put(lane, value.of_baby(fact));
    }
}

/// Numbers go through the engine's own reading of them.
void FactLanes::read_measures(FastCase const& baby) {
    if (baby.measures.empty()) return;
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

}  // namespace asterism::batch
