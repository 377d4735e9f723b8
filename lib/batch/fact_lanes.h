// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "batch/fact_values.h"
#include "batch/lanes.h"

namespace asterism::batch {

/// A case in a lane, and how what nobody said of it is taken.
struct Seat {
    FastCase const* baby = nullptr;
    Rest rest = Rest::unknown;
};

/// The facts of some cases, a lane each. What hangs on the exam, the sex and the history alone is
/// set for all lanes at once; then what each case says of findings, measures and ages.
class FactLanes {
public:
    explicit FactLanes(FastBook const& book);

    /// One truth a node of the circuit, with the facts set; the gates are left to the caller. At
    /// most Lanes::count seats; the other lanes hold nothing of use.
    std::span<LaneTruth> fill(std::span<Seat const> seats);

private:
    /// Findings that are open in the same cases as long as nothing is said of them.
    struct Group {
        StepId step = 0;
        Sex sex = Sex::not_given;
        bool history_region = false;
        friend auto operator<=>(Group const&, Group const&) = default;
    };
    /// A fact that is unknown when its finding is open; when the rest is normal only if it is told
    /// and not examined.
    struct OpenFact {
        NodeId node = 0;
        std::uint32_t group = 0;
        bool told = false;
    };
    /// Facts about one number, such as the age in hours.
    struct RangeFacts {
        std::vector<BabyFact> facts;
        Lists<NodeId> true_at;  ///< by the number
    };

    void add_finding(FindingId id);
    void add_ranges(RangeFacts& ranges, Fact::Kind kind, std::size_t most);
    void clear_lanes();
    void note_lane(std::size_t lane, Seat const& seat);
    void note_steps(std::size_t lane, StepSet const& steps);
    void fill_open();
    void fill_of_baby(BabyFact const& fact);
    void put_lane(std::size_t lane, Seat const& seat);
    void put_ranges(std::size_t lane, RangeFacts const& ranges, std::optional<int> number,
                    FactValues const& value);
    void put_measures(std::size_t lane, FactValues const& value);
    void read_measures(FastCase const& baby);
    Lanes other_sex(Sex sex) const;

    FastBook const& book_;
    OwnStates states_;
    std::vector<std::optional<Truth>> tests_;  ///< what the measures of one case say
    std::vector<LaneTruth> values_;
    std::vector<Group> groups_;
    std::vector<OpenFact> open_facts_;
    RangeFacts ages_, gestations_;

    std::vector<Lanes> done_;  ///< by step
    std::vector<Lanes> open_;  ///< by group
    Lanes rest_unknown_, whole_exam_, female_, male_, history_none_, no_age_, no_gestation_;
};

}  // namespace asterism::batch
