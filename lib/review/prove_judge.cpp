// SPDX-License-Identifier: MIT
// The promise put to the engine itself, for one case: the judge of every counterexample.
#include <algorithm>

#include <fmt/format.h>

#include "assess/facts.h"
#include "assess/verdicts.h"
#include "review/prove.h"
#include "review/prove_case.h"

namespace asterism {

namespace {

using Kind = CompiledOutcome::Kind;
using Verdicts = std::vector<ServiceVerdict>;

class Judge {
public:
    Judge(Promises const& promises, CompiledPromise const& promise, Case const& baby)
        : book_(promises.book),
          promise_(promise),
          syntax_(promises.syntax(promise)),
          baby_(baby),
          facts_(evaluate(book_, baby, Rest::unknown)),
          verdicts_(verdicts(book_, facts_.values)) {}

    std::string run(std::string& finding) const {
        if (promise_.when && value_of(*promise_.when, facts_.values) != Truth::yes) return {};
        if (promise_.findings.empty()) return outcomes(verdicts_);
        for (auto const id : promise_.findings) {
            auto said = promise_.adding ? added(id) : applies_to(id) ? outcomes(verdicts_) : "";
            if (said.empty()) continue;
            finding = book_.ontology->at(id).id.text;
            return said;
        }
        return {};
    }

private:
    bool present(FindingId id) const {
        return value_of(book_.present[id], facts_.values) == Truth::yes;
    }

    bool applies_to(FindingId id) const {
        if (!present(id)) return false;
        if (syntax_.familial && !facts_.states[id].familial) return false;
        return !syntax_.alone || nothing_beside(id);
    }

    bool nothing_beside(FindingId id) const {
        auto const above = book_.ontology->ancestors(id);
        for (FindingId other = 0; other < book_.present.size(); ++other) {
            bool const itself =
                other == id || std::find(above.begin(), above.end(), other) != above.end();
            if (!itself && present(other)) return false;
        }
        return std::none_of(book_.facts.begin(), book_.facts.end(), [&](Fact const& fact) {
            return fact.kind == Fact::Kind::measure && facts_.values[fact.node] == Truth::yes;
        });
    }

    std::string added(FindingId id) const {
        if (facts_.states[id].own == Truth::yes) return {};
        auto const after = with_finding(baby_, book_, id);
        if (!after) return {};
        auto const then = verdicts(book_, evaluate(book_, *after, Rest::unknown).values);
        return outcomes(then);
    }

    std::string outcomes(Verdicts const& then) const {
        for (auto const& outcome : promise_.then) {
            if (auto said = broken(outcome, then); !said.empty()) return said;
        }
        return {};
    }

    static bool reaches(Verdicts const& all, ServiceId service, Urgency urgency) {
        return all[service].urgency && *all[service].urgency >= urgency;
    }

    std::string broken(CompiledOutcome const& outcome, Verdicts const& then) const {
        switch (outcome.kind) {
            case Kind::suggest: return not_suggested(outcome);
            case Kind::never: return suggested_all_the_same(outcome);
            case Kind::holds: {
                auto const value = value_of(outcome.holds, facts_.values);
                return value == Truth::yes  ? ""
                       : value == Truth::no ? "the condition is not met"
                                            : "the condition is open";
            }
            case Kind::never_met: {
                bool const met = value_of(outcome.holds, facts_.values) == Truth::yes;
                return met ? "the condition is met" : "";
            }
            case Kind::keeps_urgency:
                return lowered(highest(verdicts_), highest(then), "the whole");
            case Kind::keeps_services: return service_lowered(then);
        }
        return {};
    }

    std::string in_words(ServiceId service, Verdicts const& all) const {
        auto const& verdict = all[service];
        auto const& id = book_.book->services[service].id.text;
        if (!verdict.urgency) return fmt::format("{} {}", id, to_text(verdict.verdict));
        return fmt::format("{} suggested, {}", id, to_text(*verdict.urgency));
    }

    std::string not_suggested(CompiledOutcome const& outcome) const {
        std::vector<std::string> words;
        for (auto const service : outcome.services) {
            if (reaches(verdicts_, service, outcome.at_least)) return {};
            words.push_back(in_words(service, verdicts_));
        }
        if (words.size() == book_.book->services.size()) return "no service at that urgency";
        return fmt::format("{}", fmt::join(words, "; "));
    }

    std::string suggested_all_the_same(CompiledOutcome const& outcome) const {
        for (auto const service : outcome.services) {
            if (reaches(verdicts_, service, outcome.at_least)) return in_words(service, verdicts_);
        }
        return {};
    }

    static std::optional<Urgency> highest(Verdicts const& all) {
        std::optional<Urgency> result;
        for (auto const& verdict : all) {
            if (verdict.urgency && (!result || *verdict.urgency > *result))
                result = verdict.urgency;
        }
        return result;
    }

    static std::string lowered(std::optional<Urgency> before, std::optional<Urgency> after,
                               std::string_view what) {
        if (!before || (after && *after >= *before)) return {};
        return fmt::format("{} falls from {} to {}", what, to_text(*before),
                           after ? to_text(*after) : "no suggestion");
    }

    std::string service_lowered(Verdicts const& then) const {
        for (ServiceId service = 0; service < then.size(); ++service) {
            auto const& id = book_.book->services[service].id.text;
            auto said = lowered(verdicts_[service].urgency, then[service].urgency, id);
            if (!said.empty()) return said;
        }
        return {};
    }

    CompiledRulebook const& book_;
    CompiledPromise const& promise_;
    PromiseSyntax const& syntax_;
    Case const& baby_;
    CaseFacts facts_;
    Verdicts verdicts_;
};

}  // namespace

std::string broken_by(Promises const& promises, CompiledPromise const& promise, Case const& baby,
                      std::string& finding) {
    return Judge(promises, promise, baby).run(finding);
}

}  // namespace asterism
