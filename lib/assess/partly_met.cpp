// SPDX-License-Identifier: MIT
#include "assess/partly_met.h"

#include <algorithm>

#include <fmt/format.h>

namespace asterism {

namespace {

class Meter {
public:
    Meter(EvidenceReader const& reader, CaseFacts const& facts, CompiledRulebook const& book)
        : reader_(reader), facts_(facts), book_(book) {}

    Progress measure(CompiledCondition const& condition) const {
        if (condition.children.empty()) return leaf(condition);
        auto const kind = condition.condition->kind();
        // What a negated group lacks is the absence of something: no progress towards a referral.
        if (condition.condition->negates()) return negated(condition);
        if (kind == "any") return best(condition);
        return together(condition);
    }

private:
    std::string words(CompiledCondition const& condition) const {
        return condition.condition->describe(reader_.vocabulary());
    }

    Progress leaf(CompiledCondition const& condition) const {
        auto const data = condition.condition->leaf();
        if (data.kind == Leaf::Kind::tally && !data.at_most) return tally(data);
        if (data.kind == Leaf::Kind::constellation)
            return measure(book_.constellations[data.index].reached);
        if (reader_.value(condition.literal) == Truth::yes) {
            bool const something_seen = data.kind == Leaf::Kind::finding && !data.wants_absent;
            return {something_seen ? 1.0 : 0.5, {}};
        }
        return {0, {words(condition)}};
    }

    Progress tally(Leaf const& leaf) const {
        auto const& tally = book_.tallies[leaf.index];
        auto const bounds = sum(tally.inputs, facts_.counted);
        double const share = static_cast<double>(bounds.low) / static_cast<double>(leaf.threshold);
        if (share >= 1) return {1, {}};
        return {share,
                {fmt::format("{}: {} of {}", tally.label, points_text(bounds.low),
                             points_text(leaf.threshold))}};
    }

    Progress negated(CompiledCondition const& condition) const {
        bool const met = reader_.value(condition.literal) == Truth::yes;
        return met ? Progress{0.5, {}} : Progress{0, {words(condition)}};
    }

    Progress best(CompiledCondition const& condition) const {
        Progress result;
        for (auto const& child : condition.children) {
            auto progress = measure(child);
            if (progress.share > result.share || result.lacks.empty()) result = std::move(progress);
        }
        return result;
    }

    Progress together(CompiledCondition const& condition) const {
        Progress result;
        for (auto const& child : condition.children) {
            auto const progress = measure(child);
            result.share += progress.share / static_cast<double>(condition.children.size());
            result.lacks.insert(result.lacks.end(), progress.lacks.begin(), progress.lacks.end());
        }
        return result;
    }

    EvidenceReader const& reader_;
    CaseFacts const& facts_;
    CompiledRulebook const& book_;
};

}  // namespace

Progress progress(CompiledCondition const& condition, EvidenceReader const& reader,
                  CaseFacts const& facts, CompiledRulebook const& book) {
    return Meter(reader, facts, book).measure(condition);
}

}  // namespace asterism
