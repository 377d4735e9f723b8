// SPDX-License-Identifier: MIT
#include "batch/fast_judge.h"

#include <algorithm>
#include <numeric>

#include "assess/facts.h"

namespace asterism::batch {

namespace {

/// As in `assess/verdicts.cpp`: every further open split doubles the work.
constexpr std::size_t most_splits = 4;

std::optional<Urgency> urgency_of(std::uint8_t found) {
    return found == 0 ? std::nullopt : std::optional(static_cast<Urgency>(found - 1));
}

}  // namespace

FastJudge::FastJudge(FastBook const& book)
    : book_(book), services_(book.circuit().services()), facts_(book) {}

std::span<Answers const> FastJudge::judge(std::span<FastCase const> babies) {
    auto const cases = babies.size();
    numbers_.resize(cases);
    std::iota(numbers_.begin(), numbers_.end(), std::size_t{0});
    splits_.clear();
    unsettled_.clear();
    judge(babies, numbers_, Rest::unknown);
    judge(babies, unsettled_, Rest::normal);
    settle_splits();
    if (answers_.size() < cases) answers_.resize(cases, Answers(services_));
    for (std::size_t baby = 0; baby < cases; ++baby) answer(baby);
    return std::span(answers_).first(cases);
}

/// Some of the cases, by their numbers.
void FastJudge::judge(std::span<FastCase const> babies, std::span<std::size_t const> numbers,
                      Rest rest) {
    auto& found = this->found(rest);
    found.resize(babies.size() * services_);
    std::fill(found.begin(), found.end(), Found{});
    while (!numbers.empty()) {
        auto const some = numbers.first(std::min(Lanes::count, numbers.size()));
        seats_.clear();
        for (auto const baby : some) seats_.push_back({&babies[baby], rest});
        auto const values = facts_.fill(seats_);
        book_.circuit().evaluate(values);
        read(values, some, found);
        if (rest == Rest::unknown) note_unsettled(values, some);
        note_splits(values, some);
        numbers = numbers.subspan(some.size());
    }
}

/// Above the highest urgency that some rule gives, an answer is `unknown` exactly when an open rule
/// would give it. What the lanes say goes to the rows of these numbers, that say nothing yet.
void FastJudge::read(std::span<LaneTruth const> values, std::span<std::size_t const> rows,
                     AllFound& found) const {
    auto const used = Lanes::first(rows.size());
    for (ServiceId service = 0; service < services_; ++service) {
        for (auto const urgency :
             {Urgency::routine, Urgency::urgent, Urgency::same_day, Urgency::emergency}) {
            auto const& value = values[book_.circuit().answer(service, urgency)];
            auto const code = static_cast<std::uint8_t>(static_cast<int>(urgency) + 1);
            auto const at = [&](std::size_t lane) { return rows[lane] * services_ + service; };
            (value.unknown() & used).each([&](std::size_t lane) { found[at(lane)].open = code; });
            (value.surely & used).each([&](std::size_t lane) { found[at(lane)] = {code, 0}; });
        }
    }
}

void FastJudge::note_unsettled(std::span<LaneTruth const> values,
                               std::span<std::size_t const> numbers) {
    Lanes unsettled;
    for (ServiceId service = 0; service < services_; ++service) {
        LaneTruth any;
        for (std::uint32_t urgency = 0; urgency < FastCircuit::urgencies; ++urgency)
            any |= values[book_.circuit().answer(service, static_cast<Urgency>(urgency))];
        unsettled |= any.unknown();
    }
    (unsettled & Lanes::first(numbers.size())).each([&](std::size_t lane) {
        unsettled_.push_back(numbers[lane]);
    });
}

void FastJudge::note_splits(std::span<LaneTruth const> values,
                            std::span<std::size_t const> numbers) {
    auto const used = Lanes::first(numbers.size());
    auto const earlier = static_cast<std::ptrdiff_t>(splits_.size());
    for (auto const& [counted, unless] : book_.circuit().splits()) {
        auto const& there = values[counted.node];
        auto const open = (counted.negated ? ~there.possibly : there.surely) &
                          values[unless.node].unknown() & used;
        open.each([&](std::size_t lane) {
            auto const baby = numbers[lane];
            auto at = std::find_if(splits_.begin() + earlier, splits_.end(),
                                   [&](SplitSeat const& one) { return one.baby == baby; });
            if (at == splits_.end()) at = splits_.insert(at, {baby, seats_[lane], {}});
            if (std::find(at->open.begin(), at->open.end(), unless) == at->open.end())
                at->open.push_back(unless);
        });
    }
}

void FastJudge::settle_splits() {
    std::erase_if(splits_, [](SplitSeat const& one) { return one.open.size() > most_splits; });
    for (auto first = splits_.begin(); first != splits_.end();) {
        std::size_t lanes = 0;
        auto last = first;
        while (last != splits_.end() && lanes + last->branches() <= Lanes::count)
            lanes += last++->branches();
        settle_splits({first, last});
        first = last;
    }
}

void FastJudge::settle_splits(std::span<SplitSeat const> seats) {
    seats_.clear();
    for (auto const& one : seats) seats_.insert(seats_.end(), one.branches(), one.seat);
    auto const values = facts_.fill(seats_);
    book_.circuit().evaluate(values, holds(seats));
    rows_.resize(seats_.size());
    std::iota(rows_.begin(), rows_.end(), std::size_t{0});
    branches_.assign(rows_.size() * services_, {});
    read(values, rows_, branches_);
    std::size_t first = 0;
    for (auto const& one : seats) {
        keep_common(one, first);
        first += one.branches();
    }
}

/// What the open questions are held at in the lanes of the branches.
std::vector<Hold> FastJudge::holds(std::span<SplitSeat const> seats) const {
    std::vector<Hold> holds;
    std::size_t first = 0;
    for (auto const& one : seats) {
        for (std::size_t i = 0; i < one.open.size(); ++i) {
            auto const [node, negated] = one.open[i];
            auto hold = std::lower_bound(holds.begin(), holds.end(), node,
                                         [](Hold const& h, NodeId id) { return h.node < id; });
            if (hold == holds.end() || hold->node != node)
                hold = holds.insert(hold, {node, {}, {}});
            for (std::size_t branch = 0; branch < one.branches(); ++branch) {
                bool const yes = ((branch >> i & 1u) != 0) != negated;
                hold->lanes.set(first + branch);
                hold->value.put(first + branch, truth(yes));
            }
        }
        first += one.branches();
    }
    return holds;
}

/// What every branch of a case suggests, at the lowest urgency of any, is suggested.
void FastJudge::keep_common(SplitSeat const& one, std::size_t first_lane) {
    for (ServiceId service = 0; service < services_; ++service) {
        std::uint8_t lowest = UINT8_MAX;
        for (std::size_t branch = 0; branch < one.branches(); ++branch)
            lowest =
                std::min(lowest, branches_[(first_lane + branch) * services_ + service].urgency);
        auto& urgency = found(one.seat.rest)[one.baby * services_ + service].urgency;
        urgency = std::max(urgency, lowest);
    }
}

void FastJudge::answer(std::size_t baby) {
    auto const* now = &now_[baby * services_];
    auto const* rest = &rest_[baby * services_];
    for (auto& answer : answers_[baby]) {
        answer_service(*now++, *rest++, answer);
    }
}

void FastJudge::answer_service(Found now, Found rest, ServiceAnswer& answer) {
    // Most services have nothing to say, now as before.
    if (now == Found{} && answer.verdict == Verdict::not_suggested) return;
    answer = {now.verdict(), urgency_of(now.urgency), {}, {}};
    if (answer.verdict == Verdict::unsettled)
        answer.if_rest_normal = rest.verdict();
    else if (now.urgency != 0 && now.open > now.urgency)
        answer.may_rise_to = urgency_of(now.open);
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
    for (auto const& answer : answers) {
        if (answer.verdict == Verdict::suggested) highest = std::max(highest, answer.urgency);
    }
    return highest;
}

}  // namespace asterism::batch
