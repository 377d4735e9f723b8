// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "assess/assessment.h"
#include "assess/verdicts.h"
#include "batch/fact_lanes.h"

namespace asterism::batch {

/// What is said of one service: the keys that a batch's line shares with an assessment.
struct ServiceAnswer {
    Verdict verdict = Verdict::not_suggested;
    std::optional<Urgency> urgency;         ///< of a suggested verdict
    std::optional<Urgency> may_rise_to;     ///< of a suggested verdict
    std::optional<Verdict> if_rest_normal;  ///< of an unsettled verdict

    friend bool operator==(ServiceAnswer const&, ServiceAnswer const&) = default;
};

/// One answer a service, in book order.
using Answers = std::vector<ServiceAnswer>;

/// Gives verdicts without reasons, fast: many cases go through the circuit at once, a lane each.
/// One thread's working state over a shared FastBook.
class FastJudge {
public:
    explicit FastJudge(FastBook const& book);

    /// The answers, in the order of the cases, hold until the next call. Many cases at once are
    /// judged in little more time than one.
    std::span<Answers const> judge(std::span<FastCase const> babies);

private:
    /// The highest urgency that a rule gives, and the highest above it that an open rule would
    /// give: 0 for none, else the urgency plus one.
    struct Found {
        std::uint8_t urgency = 0;
        std::uint8_t open = 0;

        Verdict verdict() const {
            if (urgency != 0) return Verdict::suggested;
            return open != 0 ? Verdict::unsettled : Verdict::not_suggested;
        }
        friend bool operator==(Found, Found) = default;
    };
    /// By case, then service.
    using AllFound = std::vector<Found>;

    /// A seat whose count hangs on open questions. Each way to answer them is a *branch*, tried in
    /// a lane of its own.
    struct SplitSeat {
        std::size_t baby = 0;
        Seat seat;
        std::vector<Literal> open;
        std::size_t branches() const { return std::size_t{1} << open.size(); }
    };

    void judge(std::span<FastCase const> babies, std::span<std::size_t const> numbers, Rest rest);
    void read(std::span<LaneTruth const> values, std::span<std::size_t const> rows,
              AllFound& found) const;
    void note_unsettled(std::span<LaneTruth const> values, std::span<std::size_t const> numbers);
    void note_splits(std::span<LaneTruth const> values, std::span<std::size_t const> numbers);
    void settle_splits();
    void settle_splits(std::span<SplitSeat const> seats);
    std::vector<Hold> holds(std::span<SplitSeat const> seats) const;
    void keep_common(SplitSeat const& one, std::size_t first_lane);
    void answer(std::size_t baby);
    static void answer_service(Found now, Found rest, ServiceAnswer& answer);
    AllFound& found(Rest rest) { return rest == Rest::normal ? rest_ : now_; }

    FastBook const& book_;
    std::size_t services_;
    FactLanes facts_;
    std::vector<Seat> seats_;
    std::vector<std::size_t> numbers_;    ///< of all cases
    std::vector<std::size_t> unsettled_;  ///< numbers of cases of which some service is
    std::vector<std::size_t> rows_;       ///< of branches
    AllFound branches_;
    AllFound now_, rest_;
    std::vector<SplitSeat> splits_;
    std::vector<Answers> answers_;
};

/// The answers of the engine itself, for cases that are explained and for tests.
Answers engine_answers(CompiledRulebook const& book, Case const& baby);
/// The highest urgency of a suggested service.
std::optional<Urgency> highest_urgency(Answers const& answers);

}  // namespace asterism::batch
