// SPDX-License-Identifier: MIT
#include "review/rehearse.h"

#include <algorithm>
#include <set>

#include <fmt/format.h>

#include "assess/evidence.h"
#include "assess/facts.h"
#include "assess/verdicts.h"
#include "review/vignette.h"

namespace asterism {

namespace {

class Comparison {
public:
    Comparison(CompiledRulebook const& book, Vignette const& vignette, CaseFacts const& facts)
        : book_(book),
          vignette_(vignette),
          facts_(facts),
          verdicts_(verdicts(book, facts_.values)) {}

    std::vector<VignetteFailure> run() {
        for (ServiceId service = 0; service < verdicts_.size(); ++service)
            if (vignette_.compares_referrals) compare(service);
        for (auto const& expected : vignette_.tallies) compare(expected);
        for (auto const& expected : vignette_.constellations) compare(expected);
        for (auto const& expected : vignette_.classes) compare(expected);
        return std::move(failures_);
    }

private:
    void fail(Span const& place, std::string message) {
        failures_.push_back({vignette_.id.text, place,
                             fmt::format("vignette `{}`: {}", vignette_.id.text, message)});
    }

    std::set<std::string> deciding(ServiceId service) const {
        auto rules = deciding_rules(book_, facts_.values, service);
        if (rules.empty()) rules = deciding_rules(book_, facts_.counted, service);
        std::set<std::string> names;
        for (auto const rule : rules) names.insert(book_.syntax(book_.rules[rule]).id.text);
        return names;
    }

    void compare(ServiceId service) {
        auto const& id = book_.book->services[service].id.text;
        auto const& found = verdicts_[service];
        auto const expected =
            std::find_if(vignette_.referrals.begin(), vignette_.referrals.end(),
                         [&](ExpectedReferral const& e) { return e.service.text == id; });
        if (expected != vignette_.referrals.end()) return compare(service, *expected);
        if (found.verdict == Verdict::suggested) {
            fail(vignette_.id.span, fmt::format("{} is suggested by {}, but not expected", id,
                                                fmt::join(deciding(service), ", ")));
        }
    }

    void compare(ServiceId service, ExpectedReferral const& expected) {
        auto const& found = verdicts_[service];
        auto const& place = expected.service.span;
        auto const& id = expected.service.text;
        if (found.verdict != expected.verdict) {
            auto const rules = found.verdict == Verdict::suggested
                                   ? fmt::format(" (by {})", fmt::join(deciding(service), ", "))
                                   : "";
            return fail(place, fmt::format("{} is {}, expected {}{}", id, to_text(found.verdict),
                                           to_text(expected.verdict), rules));
        }
        if (expected.urgency && found.urgency != expected.urgency) {
            fail(place, fmt::format("{} is {}, expected {}", id,
                                    found.urgency ? to_text(*found.urgency) : "without urgency",
                                    to_text(*expected.urgency)));
        }
        if (!expected.by) return;
        std::set<std::string> wanted;
        for (auto const& rule : *expected.by) wanted.insert(rule.text);
        auto const rules = deciding(service);
        if (rules != wanted)
            fail(place, fmt::format("{} is decided by {}, expected {}", id, fmt::join(rules, ", "),
                                    fmt::join(wanted, ", ")));
    }

    void compare(ExpectedTally const& expected) {
        for (auto const& tally : book_.tallies) {
            if (tally.id != expected.tally.text) continue;
            auto const low = points_text(sum(tally.inputs, facts_.counted).low);
            auto const wanted = points_text(static_cast<Tenths>(expected.value * 10 + 0.5));
            if (low != wanted)
                fail(expected.tally.span,
                     fmt::format("{} is {}, expected {}", tally.id, low, wanted));
        }
    }

    void compare(ExpectedConstellation const& expected) {
        for (auto const& constellation : book_.constellations) {
            if (book_.syntax(constellation).id.text != expected.constellation.text) continue;
            auto const reached = value_of(constellation.reached.literal, facts_.values);
            auto const words = [](Truth t) {
                return t == Truth::yes ? "reached" : t == Truth::no ? "missed" : "open";
            };
            if (reached != expected.reached) {
                fail(expected.constellation.span,
                     fmt::format("{} is {}, expected {}", expected.constellation.text,
                                 words(reached), words(expected.reached)));
            }
        }
    }

    void compare(ExpectedClass const& expected) {
        auto const& name = expected.name;
        auto const there = value_of(book_.present[expected.finding], facts_.values);
        auto const words = [](Truth t) {
            return t == Truth::yes ? "present" : t == Truth::no ? "not present" : "open";
        };
        if (there != expected.present)
            return fail(name.span, fmt::format("{} is {}, expected {}", name.text, words(there),
                                               words(expected.present)));
        if (there != Truth::yes) return;
        auto const found = book_.class_of(expected.finding);
        if (found != expected.value)
            fail(name.span,
                 fmt::format("{} is classed {}, expected {}", name.text,
                             found ? to_text(*found) : "nowhere", to_text(*expected.value)));
    }

    CompiledRulebook const& book_;
    Vignette const& vignette_;
    CaseFacts const& facts_;
    std::vector<ServiceVerdict> verdicts_;
    std::vector<VignetteFailure> failures_;
};

}  // namespace

std::vector<VignetteFailure> judge(CompiledRulebook const& book, Vignette const& vignette,
                                   CaseFacts const& facts) {
    return Comparison(book, vignette, facts).run();
}

std::vector<VignetteFailure> judge(CompiledRulebook const& book, Vignette const& vignette) {
    return judge(book, vignette, evaluate(book, vignette.baby, Rest::unknown));
}

Rehearsal rehearse_all(CompiledRulebook const& book, Diagnostics& diagnostics) {
    Rehearsal result{read_vignettes(book, diagnostics), {}, Coverage(book)};
    for (auto const& vignette : result.vignettes) {
        auto const facts = evaluate(book, vignette.baby, Rest::unknown);
        result.failures.push_back(judge(book, vignette, facts));
        if (!vignette.generated) result.coverage.see(facts.values);
    }
    return result;
}

std::vector<VignetteFailure> rehearse(CompiledRulebook const& book, Diagnostics& diagnostics) {
    std::vector<VignetteFailure> failures;
    for (auto const& found : rehearse_all(book, diagnostics).failures)
        failures.insert(failures.end(), found.begin(), found.end());
    return failures;
}

void report_failed_vignettes(CompiledRulebook const& book, Diagnostics& diagnostics) {
    for (auto const& failed : rehearse(book, diagnostics))
        diagnostics.error("vignette-fails", failed.place, failed.message);
}

}  // namespace asterism
