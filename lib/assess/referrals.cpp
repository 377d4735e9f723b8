// SPDX-License-Identifier: MIT
#include "assess/referrals.h"

#include <algorithm>

#include <fmt/format.h>

#include "assess/open_questions.h"
#include "assess/partly_met.h"

namespace asterism {

namespace {

class ReferralWriter {
public:
    ReferralWriter(CompiledRulebook const& book, Case const& baby, CaseFacts const& facts,
                   EvidenceReader const& reader)
        : book_(book), baby_(baby), facts_(facts), reader_(reader) {}

    Referral write(ServiceId service, ServiceVerdict const& verdict,
                   ServiceVerdict const& rest_normal) const {
        auto const& known = book_.book->services[service];
        Referral referral;
        referral.service = known.id.text;
        referral.label = known.label;
        referral.verdict = verdict.verdict;
        referral.urgency = verdict.urgency;
        if (verdict.urgency && verdict.open_urgency && *verdict.open_urgency > *verdict.urgency)
            referral.may_rise_to = verdict.open_urgency;
        if (verdict.verdict == Verdict::suggested)
            referral.reasons = deciding(service);
        else
            add_nearest(service, referral);
        if (verdict.verdict == Verdict::unsettled) {
            referral.if_rest_normal = rest_normal.verdict;
            add_open(service, referral);
        }
        return referral;
    }

private:
    Reason reason(CompiledRule const& rule, Urgency urgency) const {
        auto const& syntax = book_.syntax(rule);
        Reason result;
        result.rule = syntax.id.text;
        result.text = syntax.because;
        result.urgency = urgency;
        result.strength = syntax.strength;
        result.caution = syntax.caution;
        result.place =
            fmt::format("{}:{}", syntax.id.span.known() ? syntax.id.span.source->name() : "",
                        syntax.id.span.position().line);
        for (auto const& source : syntax.sources) result.sources.push_back(source.text);
        return result;
    }

    /// The rules that are true; when only the open splits taken together decide, the rules that are
    /// true with them closed.
    std::vector<Reason> deciding(ServiceId service) const {
        auto reasons = true_rules(facts_, service);
        if (!reasons.empty()) return reasons;
        auto closed = facts_;
        closed.values = facts_.counted;
        return true_rules(closed, service);
    }

    std::vector<Reason> true_rules(CaseFacts const& facts, ServiceId service) const {
        EvidenceReader const reader(book_, baby_, facts);
        std::vector<Reason> reasons;
        for (auto const id : deciding_rules(book_, facts.values, service)) {
            auto const& rule = book_.rules[id];
            reasons.push_back(reason(rule, *urgency_for(rule, service)));
            reasons.back().evidence = reader.decisive(rule.when);
        }
        std::stable_sort(reasons.begin(), reasons.end(),
                         [](Reason const& a, Reason const& b) { return a.urgency > b.urgency; });
        return reasons;
    }

    /// False only when nothing recorded does, so that the rule need not be looked into.
    bool something_speaks_for(CompiledRule const& rule) const {
        return std::any_of(rule.signs.begin(), rule.signs.end(), [&](Literal sign) {
            return value_of(sign, facts_.values) == Truth::yes ||
                   value_of(sign, facts_.counted) == Truth::yes;
        });
    }

    /// The rule that came nearest, provided that something recorded speaks for it.
    void add_nearest(ServiceId service, Referral& referral) const {
        CompiledRule const* nearest = nullptr;
        Progress best;
        for (auto const& rule : book_.rules) {
            if (!urgency_for(rule, service) || !something_speaks_for(rule)) continue;
            auto progress = asterism::progress(rule.when, reader_, facts_, book_);
            if (progress.share <= best.share || positive(rule.when).empty()) continue;
            best = std::move(progress);
            nearest = &rule;
        }
        if (!nearest) return;
        referral.reasons.push_back(reason(*nearest, *urgency_for(*nearest, service)));
        referral.reasons.back().lacks = std::move(best.lacks);
        referral.reasons.back().evidence = positive(nearest->when);
    }

    /// Present findings that a condition asks for, whatever the condition's own value.
    std::vector<Evidence> positive(CompiledCondition const& condition) const {
        std::vector<Evidence> result;
        auto const leaf = condition.condition->leaf();
        if (leaf.kind == Leaf::Kind::tally && !leaf.at_most)
            result = reader_.counted(book_.tallies[leaf.index]);
        if (leaf.kind == Leaf::Kind::constellation)
            result = positive(book_.constellations[leaf.index].reached);
        if (leaf.kind == Leaf::Kind::finding && !leaf.wants_absent &&
            reader_.value(book_.present[leaf.index]) == Truth::yes) {
            for (auto const id : reader_.present_by(leaf.index))
                result.push_back(reader_.finding(id));
        }
        if (condition.condition->negates()) return {};
        for (auto const& child : condition.children) {
            for (auto& evidence : positive(child)) add(result, std::move(evidence));
        }
        return result;
    }

    static void add(std::vector<Evidence>& result, Evidence evidence) {
        bool const known = std::any_of(result.begin(), result.end(),
                                       [&](Evidence const& e) { return e.id == evidence.id; });
        if (!known) result.push_back(std::move(evidence));
    }

    void add_open(ServiceId service, Referral& referral) const {
        std::vector<Literal> open;
        for (auto const& rule : book_.rules) {
            if (urgency_for(rule, service) && reader_.value(rule.when.literal) == Truth::unknown)
                open.push_back(rule.when.literal);
        }
        auto questions = open_questions(book_, facts_, open);
        referral.settled_by = std::move(questions.steps);
        referral.open_facts = std::move(questions.facts);
    }

    CompiledRulebook const& book_;
    Case const& baby_;
    CaseFacts const& facts_;
    EvidenceReader const& reader_;
};

}  // namespace

std::vector<Referral> referrals(CompiledRulebook const& book, Case const& baby,
                                CaseFacts const& facts,
                                std::vector<ServiceVerdict> const& rest_normal,
                                EvidenceReader const& reader) {
    auto const found = verdicts(book, facts.values);
    ReferralWriter const writer(book, baby, facts, reader);
    std::vector<Referral> result;
    for (ServiceId service = 0; service < found.size(); ++service) {
        result.push_back(writer.write(service, found[service], rest_normal[service]));
    }
    return result;
}

}  // namespace asterism
