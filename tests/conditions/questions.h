// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/truth.h"
#include "conditions/builder.h"
#include "conditions/read.h"
#include "support/small_book.h"
#include "yaml/read.h"

namespace asterism::testing {

inline Ontology const& condition_ontology() {
    static Ontology const loaded = [] {
        Diagnostics diagnostics;
        auto ontology = load_ontology({make_source("ontology.yaml", small_ontology)}, diagnostics);
        REQUIRE(ontology);
        return std::move(*ontology);
    }();
    return loaded;
}

/// Answers every question that a condition asks with the truth that a test gave
/// it, at once; what the test left out is unknown. Literals are positions in
/// the list of answers.
class Answers final : public Builder {
public:
    explicit Answers(std::map<std::string, Truth> known) : known_(std::move(known)) {}

    Literal present(FindingId finding) override { return ask(name(finding)); }
    Literal on_side(FindingId finding, SideWanted side) override {
        static char const* const sides[] = {"left", "right", "both", "one"};
        return ask(name(finding) + " " + sides[static_cast<int>(side)]);
    }
    Literal graded(FindingId finding, std::uint32_t grade) override {
        return ask(name(finding) + " " + condition_ontology().at(finding).grades[grade].text);
    }
    Literal tally_at_least(TallyId tally, Tenths threshold) override {
        return ask("tally " + std::to_string(tally) + " >= " + std::to_string(threshold));
    }
    Literal reached(ConstellationId constellation) override {
        return ask("constellation " + std::to_string(constellation));
    }
    Literal measured(MeasureTest const& test) override {
        static char const* const statistics[] = {"z", "centile", "value"};
        tests.push_back(test);
        return ask(condition_ontology().measures[test.measure].id.text + " " +
                   statistics[static_cast<int>(test.statistic)]);
    }
    Literal age(Range const& hours) override {
        ranges.push_back(hours);
        return ask("age");
    }
    Literal gestation(Range const& days) override {
        ranges.push_back(days);
        return ask("gestation");
    }
    Literal sex(Sex sex) override { return ask(std::string(to_text(sex))); }

    /// Counts with pencil and paper, not with the circuit.
    Literal gate(std::int64_t threshold, std::vector<Weighted> inputs) override {
        std::int64_t certain = 0, possible = 0;
        for (auto const& [literal, weight] : inputs) {
            if (value(literal) == Truth::yes) certain += weight;
            if (value(literal) != Truth::no) possible += weight;
        }
        return answer(certain >= threshold    ? Truth::yes
                      : possible >= threshold ? Truth::unknown
                                              : Truth::no);
    }

    Truth value(Literal literal) const {
        auto const found = answers_.at(literal.node);
        return literal.negated ? !found : found;
    }

    std::vector<std::string> asked;
    std::vector<MeasureTest> tests;
    std::vector<Range> ranges;

private:
    static std::string name(FindingId finding) { return condition_ontology().at(finding).id.text; }

    Literal ask(std::string const& question) {
        asked.push_back(question);
        auto const found = known_.find(question);
        return answer(found == known_.end() ? Truth::unknown : found->second);
    }
    Literal answer(Truth truth) {
        answers_.push_back(truth);
        return {static_cast<NodeId>(answers_.size() - 1), false};
    }

    std::map<std::string, Truth> known_;
    std::vector<Truth> answers_;
};

/// Reads one condition; tallies `minors` (0) and `majors` (1), constellation
/// `pattern` (0).
inline ConditionPtr read_text(std::string const& text, Diagnostics& diagnostics) {
    static NameIndex const tallies = [] {
        NameIndex names;
        names.add("minors", 0);
        names.add("majors", 1);
        return names;
    }();
    static NameIndex const constellations = [] {
        NameIndex names;
        names.add("pattern", 0);
        return names;
    }();
    auto const node = yaml::read_yaml(make_source("book.yaml", text), diagnostics);
    REQUIRE(node);
    return read_condition(*node, {condition_ontology(), tallies, constellations, diagnostics});
}

/// Reads a condition that must be in order.
inline ConditionPtr good(std::string const& text) {
    Diagnostics diagnostics;
    auto condition = read_text(text, diagnostics);
    CAPTURE(text);
    for (auto const& diagnostic : diagnostics.sorted()) MESSAGE(diagnostic.message);
    REQUIRE(condition);
    REQUIRE(diagnostics.empty());
    return condition;
}

/// The one problem of a condition that must be refused.
inline Diagnostic refused(std::string const& text) {
    Diagnostics diagnostics;
    auto const condition = read_text(text, diagnostics);
    CAPTURE(text);
    CHECK_FALSE(condition);
    auto const all = diagnostics.sorted();
    if (all.size() != 1)
        for (auto const& diagnostic : all) MESSAGE(diagnostic.code, ": ", diagnostic.message);
    REQUIRE(all.size() == 1);
    return all.front();
}

/// The truth of a condition, given those of the questions it asks.
inline Truth holds(std::string const& text, std::map<std::string, Truth> known) {
    Answers answers(std::move(known));
    auto const compiled = compile(good(text), answers);
    return answers.value(compiled.literal);
}

inline std::vector<std::string> asked(std::string const& text) {
    Answers answers({});
    compile(good(text), answers);
    return answers.asked;
}

/// A condition in words.
inline std::string words(std::string const& text) {
    return good(text)->describe(
        {condition_ontology(), {"minor variants", "major anomalies"}, {"the pattern"}});
}

}  // namespace asterism::testing
