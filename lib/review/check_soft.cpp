// SPDX-License-Identifier: MIT
#include "review/check_soft.h"

#include <algorithm>
#include <array>
#include <string_view>

#include <fmt/format.h>

#include "assess/facts.h"
#include "assess/verdicts.h"

namespace asterism {

namespace {

/// Hard facts of the trade, whatever an ontology says: a referral may rest on one of them.
constexpr std::array<std::string_view, 12> never_soft{
    "head-circumference",
    "weight",
    "penile-length",
    "pre-ductal-saturation",
    "post-ductal-saturation",
    "saturation-difference",
    "right-arm-pressure",
    "left-arm-pressure",
    "right-leg-pressure",
    "left-leg-pressure",
    "arm-right-leg-difference",
    "arm-left-leg-difference",
};

void check_hard_measures(Ontology const& ontology, Diagnostics& diagnostics) {
    for (auto const& measure : ontology.measures) {
        bool const hard =
            std::find(never_soft.begin(), never_soft.end(), measure.id.text) != never_soft.end();
        if (!hard || !measure.soft) continue;
        diagnostics.error("never-soft", measure.id.span,
                          fmt::format("`{}` may not be marked soft", measure.id.text),
                          "a referral may rest on it alone");
    }
}

bool is_measure(Fact::Kind kind) {
    return kind == Fact::Kind::measure || kind == Fact::Kind::measure_by_eye ||
           kind == Fact::Kind::measure_red_flag;
}

/// Cases of which nothing is known, or everything is normal, but for some soft measures.
class SoftOnly {
public:
    explicit SoftOnly(CompiledRulebook const& book) : book_(book) {
        auto nothing = empty_case(*book.ontology);
        for (auto const sex : {Sex::female, Sex::male}) {
            nothing.sex = sex;
            for (auto const rest : {Rest::unknown, Rest::normal})
                starts_.push_back(evaluate(book, nothing, rest).values);
        }
    }

    /// The first service suggested with every test of these measures past its cut-off.
    std::optional<ServiceId> suggested(std::vector<MeasureId> const& measures) const {
        for (auto values : starts_) {
            for (auto const& fact : book_.facts) {
                bool const wanted =
                    std::find(measures.begin(), measures.end(), fact.index) != measures.end();
                if (is_measure(fact.kind) && wanted) values[fact.node] = Truth::yes;
            }
            book_.circuit.evaluate(values);
            auto const found = verdicts(book_, values);
            for (ServiceId service = 0; service < found.size(); ++service) {
                if (found[service].verdict == Verdict::suggested) return service;
            }
        }
        return std::nullopt;
    }

private:
    CompiledRulebook const& book_;
    std::vector<std::vector<Truth>> starts_;
};

std::vector<MeasureId> soft_measures(Ontology const& ontology) {
    std::vector<MeasureId> soft;
    for (MeasureId id = 0; id < ontology.measures.size(); ++id) {
        if (ontology.measures[id].soft) soft.push_back(id);
    }
    return soft;
}

}  // namespace

void check_soft_measures(CompiledRulebook const& book, Diagnostics& diagnostics) {
    check_hard_measures(*book.ontology, diagnostics);
    auto const& measures = book.ontology->measures;
    SoftOnly const only(book);
    auto const soft = soft_measures(*book.ontology);
    for (std::size_t i = 0; i < soft.size(); ++i) {
        for (std::size_t j = i; j < soft.size(); ++j) {
            auto const service = only.suggested({soft[i], soft[j]});
            if (!service) continue;
            auto const& first = measures[soft[i]].id;
            auto const and_second =
                i == j ? "" : fmt::format(" with `{}`", measures[soft[j]].id.text);
            diagnostics.error(
                "rests-on-soft-measure", first.span,
                fmt::format("the soft measure `{}`{}, past its cut-offs, suggests {} alone",
                            first.text, and_second, book.book->services[*service].id.text),
                "ask for something else beside it");
        }
    }
}

}  // namespace asterism
