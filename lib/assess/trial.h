// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <memory>
#include <span>
#include <utility>
#include <vector>

#include "assess/grouped.h"
#include "assess/ripple.h"
#include "assess/verdicts.h"
#include "compile/compiled.h"

namespace asterism {

/// A case that was judged, in which facts are changed for a moment: its verdicts are kept up to
/// date by the rules that turn. They are those of `verdicts` over the same values.
class CaseTrial {
public:
    /// `values` are evaluated already.
    CaseTrial(CompiledRulebook const& book, std::vector<Truth> values);
    /// Another case judged by the same book, with which it shares what depends on the book alone.
    CaseTrial(CaseTrial const& other, std::vector<Truth> values);

    void apply(std::span<std::pair<NodeId, Truth> const> change);
    void undo();

    /// Whether no verdict can differ from the one at the start.
    bool nothing_turned() const;
    std::vector<ServiceVerdict> verdicts() const;
    Verdict verdict(ServiceId service) const;
    /// The services suggested now, ascending.
    std::vector<ServiceId> suggested() const;
    /// Those of them that were not at the start.
    std::vector<ServiceId> newly_suggested() const;

private:
    /// Rules of one service that are true, and that are open, by urgency.
    struct Standing {
        std::array<int, 4> held{};
        std::array<int, 4> open{};
        int all_held = 0;
    };

    struct Places {
        Grouped<RuleId> rules;          ///< by the node of their condition
        Grouped<std::uint32_t> splits;  ///< by either of their nodes
    };

    static std::shared_ptr<Places const> places(CompiledRulebook const& book);
    void start();
    void count(RuleId rule, Truth value, int by);
    void follow(Ripple::Turn const& turn);
    bool hangs(std::uint32_t split) const;
    bool something_hangs() const;
    ServiceVerdict by_standing(ServiceId service) const;

    CompiledRulebook const& book_;
    Ripple ripple_;
    std::shared_ptr<Places const> places_;
    bool hung_at_start_ = false;          ///< a split of the counting was open
    std::vector<Standing> standing_;      ///< by service
    std::vector<bool> at_start_;          ///< by service: suggested
    std::vector<std::uint32_t> touched_;  ///< splits of which a node turned
    bool turned_ = false;                 ///< a rule did
    std::size_t followed_ = 0;            ///< so many turns have been followed
};

}  // namespace asterism
