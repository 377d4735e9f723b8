// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "assess/assessment.h"
#include "assess/verdicts.h"
#include "batch/change_lists.h"
#include "batch/fact_values.h"

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
    /// The highest urgency that a rule gives, and the highest above it that an open rule would
    /// give: 0 for none, else the urgency plus one.
    struct Found {
        std::uint8_t urgency = 0;
        std::uint8_t open = 0;

        Verdict verdict() const {
            if (urgency != 0) return Verdict::suggested;
            return open != 0 ? Verdict::unsettled : Verdict::not_suggested;
        }
        ServiceAnswer answer() const;
        friend bool operator==(Found const&, Found const&) = default;
    };

    /// Where cases start, and what is said of every service before anything is changed.
    struct Start {
        RunState state;
        // What one step, or one statement alone in its step, changes; made when it is needed.
        std::vector<ChangeLists::Place> by_step;
        std::vector<ChangeLists::Place> by_way;  ///< see `ways_`
        std::vector<Found> found;
        Answers answers;
    };

    /// Babies that agree in sex, history and nearest start begin at the same state, with the rest
    /// unknown or normal; made when the first one comes.
    using Shared = std::array<std::unique_ptr<Start>, 2>;

    void number_ways();
    void read_measures(FastCase const& baby);
    Shared& shared_by(FastCase const& baby, std::size_t number);
    Start& start_of(FastCase const& baby, Shared& shared, Rest rest);
    std::unique_ptr<Start> make_start(FastCase const& baby, Rest rest);
    FastCase& without_findings(FastCase const& baby);
    void evaluate(FastCase const& baby, Start& start, Rest rest, std::vector<Found>& found);
    ChangeLists::Place change_of(FastCase const& baby, Start& start, StepId step, Rest rest);
    ChangeLists::Place change_by(FastCase const& baby, Start& start, FindingId id, Rest rest);
    ChangeLists::Place make_change(FastCase const& plain, Start& start, StepId step, Rest rest);
    void set_facts(FastCase const& baby, Rest rest);
    void set_findings(OwnStates const& states, FactValues const& value);
    Found read(ServiceId service) const;
    void read_changed(Start const& start, std::vector<Found>& found) const;
    void settle_splits(Start& start, std::vector<Found>& found);
    void take_branch(Start const& start, bool first);
    void add_rest(FastCase const& baby, Shared& shared);

    FastBook const& book_;
    FastRun run_;
    OwnStates states_;
    OwnStates shared_states_;
    FastCase shared_case_;
    std::vector<Shared> shared_;
    ChangeLists changes_;
    /// Numbers, from 1, of the ways in which findings were stated so far; by finding and way.
    std::vector<std::uint32_t> ways_;
    std::uint32_t ways_seen_ = 0;
    std::vector<std::optional<Truth>> tests_;
    bool measured_ = false;  ///< `tests_` holds something
    std::vector<Found> now_;
    std::vector<Found> rest_;
    std::vector<Found> branch_;
    std::vector<std::uint8_t> common_;
    std::vector<Literal> open_;
    Answers answers_;
};

/// The answers of the engine itself, for cases that are explained and for tests.
Answers engine_answers(CompiledRulebook const& book, Case const& baby);
/// The highest urgency of a suggested service.
std::optional<Urgency> highest_urgency(Answers const& answers);

}  // namespace asterism::batch
