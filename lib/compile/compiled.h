// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "base/lazy_list.h"
#include "compile/circuit.h"
#include "conditions/condition.h"
#include "norms/standard.h"
#include "ontology/ontology.h"
#include "rulebook/rulebook.h"

namespace asterism {

using ServiceId = std::uint32_t;
using KeyId = std::uint32_t;
using RuleId = std::uint32_t;

/// Something about a case that the circuit takes as given.
struct Fact {
    enum class Kind : std::uint8_t {
        finding,          ///< the finding's own state, before inheritance and derivation
        history_assumed,  ///< the same for a history item, with "not recorded" read as not present
        left,
        right,
        grade,  ///< `detail` is the grade
        familial,
        measure,           ///< `detail` indexes the measure tests; unknown when not measured
        measure_by_eye,    ///< the same, with "not measured" read as past no cut-off
        measure_red_flag,  ///< the same at a red-flag cut-off, where a band across it counts as
                           ///< past it
        age,               ///< `detail` indexes the ranges
        gestation,
        female,
        male,
    };

    Kind kind = Kind::finding;
    std::uint32_t index = 0;
    std::uint32_t detail = 0;
    NodeId node = 0;
};

/// One finding of a counting key, and whether it makes the key count.
struct CountedMember {
    FindingId finding = 0;
    Literal counts;
};

struct CountedKey {
    KeyId key = 0;
    Literal counts;
    std::vector<CountedMember> members;
    /// True when a counted major covers this field, so that its minor variants are not counted.
    std::optional<Literal> covered;
};

/// A minor variant that counts unless something else is found. While that is unknown the count is
/// not settled, but a verdict can be: when it is the same whether or not the other thing is found.
struct Split {
    Literal counted;  ///< the minor variant is there
    Literal unless;   ///< the counted major of its field, or the more specific finding
};

struct CompiledItem {
    Word item;
    Tenths points = 10;
    Clause when;
};

/// A count of keys or a sum of points, both in tenths.
struct CompiledTally {
    std::string id;
    std::string label;
    Span span;
    std::vector<FindingClass> count;
    LazyList<CountedKey> keys;
    LazyList<CompiledItem> items;
    std::vector<Weighted> inputs;
    std::optional<ConstellationId> constellation;  ///< the constellation whose items it sums
};

struct CompiledConstellation {
    std::uint32_t syntax = 0;  ///< index into the rulebook's constellations
    ServiceId service = 0;
    TallyId total = 0;            ///< the tally of all items
    std::vector<TallyId> groups;  ///< one a group; the total alone when there is one group
    Clause reached;
};

struct CompiledSuggestion {
    ServiceId service = 0;
    Urgency urgency = Urgency::routine;
};

struct CompiledFollowUp {
    std::uint32_t action = 0;
    Duration from;
    Duration to;
};

struct CompiledRule {
    std::uint32_t syntax = 0;  ///< index into the rulebook's rules
    Clause when;
    std::vector<CompiledSuggestion> suggest;
    std::vector<std::uint32_t> first_steps;  ///< indices into the rulebook's actions
    std::vector<CompiledFollowUp> follow_up;
    std::vector<Literal> signs;  ///< as `signs_of` gives them, ascending
};

/// What the book says of a finding.
struct CompiledClass {
    FindingClass value = FindingClass::normal_variant;
    std::optional<KeyId> key;
    std::uint32_t syntax = 0;  ///< index into the rulebook's classes
};

/// A finding that the book concludes, and the measures that can decide it.
struct CompiledDerivation {
    std::uint32_t syntax = 0;
    Clause when;
    std::vector<std::uint32_t> tests;  ///< indices into `measure_tests`
};

/// A rulebook ready to judge cases: names and units resolved, everything dense, immutable, shared
/// between threads.
struct CompiledRulebook {
    std::shared_ptr<Ontology const> ontology;
    std::shared_ptr<Rulebook const> book;
    std::shared_ptr<norms::Standards const> standards;  ///< never null

    Circuit circuit;
    std::vector<Fact> facts;
    std::vector<MeasureTest> measure_tests;
    std::vector<Range> ranges;  ///< of age and gestation

    std::vector<Literal> present;                            ///< by FindingId
    std::vector<std::optional<CompiledClass>> classes;       ///< by FindingId
    std::vector<std::optional<CompiledDerivation>> derived;  ///< by FindingId
    std::vector<CompiledTally> tallies;
    std::vector<CompiledConstellation> constellations;
    std::vector<CompiledRule> rules;
    std::vector<Split> splits;
    Date effective{};

    /// Refers to this book.
    Vocabulary vocabulary() const;
    Rule const& syntax(CompiledRule const& rule) const { return book->rules[rule.syntax]; }
    ConstellationSyntax const& syntax(CompiledConstellation const& c) const {
        return book->constellations[c.syntax];
    }
    std::optional<FindingClass> class_of(FindingId finding) const;
};

/// Resolves and checks a rulebook against an ontology. Nothing is returned when there are errors.
std::optional<CompiledRulebook> compile(std::shared_ptr<Rulebook const> book,
                                        std::shared_ptr<Ontology const> ontology,
                                        Diagnostics& diagnostics);

}  // namespace asterism
