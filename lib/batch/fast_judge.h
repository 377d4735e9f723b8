// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "assess/assessment.h"
#include "assess/verdicts.h"
#include "batch/fact_values.h"
#include "batch/fast_run.h"

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

/// Gives verdicts without reasons, fast: one thread's working state over a shared FastBook. Each
/// case is judged as a change of the plainest baby that is nearest to it.
class FastJudge {
public:
    explicit FastJudge(FastBook const& book);

    /// The answers hold until the next call.
    Answers const& judge(FastCase const& baby);

private:
    struct Found {
        std::optional<Urgency> urgency;
        std::optional<Urgency> open;
        friend bool operator==(Found const&, Found const&) = default;
    };

    /// A run and what it says of every service before anything is changed.
    struct Start {
        FastRun run;
        std::vector<Found> found;
        Answers answers;
    };

    void read_measures(FastCase const& baby);
    Start& start_of(std::size_t number, Rest rest);
    void evaluate(FastCase const& baby, Start& start, Rest rest, std::vector<Found>& found);
    void set_facts(FastCase const& baby, Rest rest, FastRun& run) const;
    Found read(FastRun const& run, ServiceId service) const;
    void read_changed(Start const& start, std::vector<Found>& found) const;
    void settle_splits(Start& start, std::vector<Found>& found);
    void take_branch(Start const& start, bool first);
    void add_rest(FastCase const& baby, std::size_t number);

    FastBook const& book_;
    OwnStates states_;
    std::array<std::unique_ptr<Start>, FastBook::starts * 2> starts_;
    std::vector<std::optional<Truth>> tests_;
    bool measured_ = false;  ///< `tests_` holds something
    std::vector<Found> now_;
    std::vector<Found> rest_;
    std::vector<Found> branch_;
    std::vector<std::optional<Urgency>> common_;
    std::vector<Literal> open_;
    Answers answers_;
};

/// The answers of the engine itself, for cases that are explained and for tests.
Answers engine_answers(CompiledRulebook const& book, Case const& baby);
/// The highest urgency of a suggested service.
std::optional<Urgency> highest_urgency(Answers const& answers);

}  // namespace asterism::batch
