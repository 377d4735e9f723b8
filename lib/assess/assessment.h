// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/source.h"
#include "base/time.h"
#include "base/truth.h"
#include "cases/case.h"
#include "rulebook/rulebook.h"

namespace asterism {

enum class Verdict : std::uint8_t { not_suggested, unsettled, suggested };

std::string_view to_text(Verdict verdict);

/// One thing that was seen, and what it is to the book. Empty texts are left out of every output.
struct Evidence {
    enum class Kind : std::uint8_t { finding, tally, constellation, measure, fact };

    Kind kind = Kind::finding;
    std::string id;  ///< finding, tally, constellation or measure
    std::string label;
    std::string as_written;  ///< the user's own words
    std::string state;       ///< present, absent, unknown
    std::string how;         ///< stated, inherited, derived, implied
    std::string side;
    std::string grade;
    std::string value;  ///< of a tally or measure
    std::string threshold;
    std::string key;  ///< the counting key
    std::optional<FindingClass> finding_class;
    bool familial = false;
};

/// A rule that decided a verdict, or came nearest to it.
struct Reason {
    std::string rule;
    std::string text;
    std::string place;  ///< file:line of the rule
    Urgency urgency = Urgency::routine;
    Strength strength = Strength::common_practice;
    std::vector<Evidence> evidence;
    std::vector<std::string> lacks;  ///< what a partly met rule lacked
    std::vector<std::string> sources;
    std::string caution;
};

struct StepToDo {
    std::string step;
    std::string label;
    std::string region;
    bool essential = false;
    int findings = 0;  ///< findings of the step that are not examined
    int rules = 0;     ///< open rules that the step bears on
};

/// A named thing whose change is weighed: a finding, or a measure past its cut-off.
struct Change {
    std::string id;
    std::string label;
};

/// What would change a verdict, computed on the rules and not guessed.
struct WhatWouldChange {
    /// suggested: the minimal sets of recorded things without which it falls.
    std::vector<std::vector<Change>> without;
    bool more_without = false;  ///< the search was bounded; further sets exist or may exist
    /// not suggested: the smallest additions that complete something already partly met.
    std::vector<std::vector<Change>> with;
    bool more_with = false;
    int alone = 0;  ///< single findings that would suggest it had nothing else been found
    /// unsettled: the fewest steps that, all found normal, settle it; empty when steps cannot.
    std::vector<StepToDo> examine;
    int steps_to_complete = 0;  ///< more than five are needed: how many the examination lacks
};

struct Referral {
    std::string service;
    std::string label;
    Verdict verdict = Verdict::not_suggested;
    std::optional<Verdict> if_rest_normal;  ///< of an unsettled verdict
    std::optional<Urgency> urgency;         ///< of a suggested verdict
    std::optional<Urgency> may_rise_to;  ///< when something not examined could make it more urgent
    std::vector<Reason> reasons;
    std::vector<StepToDo> settled_by;     ///< of an unsettled verdict, most telling first
    std::vector<std::string> open_facts;  ///< sex, age, gestation or measures that it waits for
    WhatWouldChange what_would_change;
};

struct SetAside {
    std::string finding;
    std::string label;
    std::string why;
};

struct TallyResult {
    std::string tally;
    std::string label;
    std::string low;   ///< counted for certain
    std::string high;  ///< with everything not examined
    std::vector<Evidence> counted;
};

struct ItemResult {
    std::string item;
    std::string points;
    Truth value = Truth::unknown;
};

struct ConstellationResult {
    std::string constellation;
    std::string label;
    std::string service;
    Truth reached = Truth::unknown;
    std::string low;
    std::string high;
    std::string possible;  ///< points of all items together
    std::string rule;      ///< the counting rule in words
    std::vector<ItemResult> items;
    std::string note;
    Strength strength = Strength::study;
    std::vector<std::string> sources;
};

/// A measure as taken or computed, with what the preferred norm says of it. z and centile are those
/// of the value as read, a band only over days or sexes that are not known; the `with_margin` ones
/// add the reading error: they are what cut-offs are compared with.
struct MeasureResult {
    std::string measure;
    std::string label;
    std::string as_written;
    std::string unit;
    double value = 0;
    std::string norm;
    std::optional<double> z_low, z_high;
    std::optional<double> centile_low, centile_high;
    std::string note;
    std::optional<double> z_with_margin_low{}, z_with_margin_high{};
    std::optional<double> centile_with_margin_low{}, centile_with_margin_high{};
    double value_low = 0, value_high = 0;  ///< with the reading error
    bool computed = false;
};

struct FollowUpResult {
    std::string action;
    std::string text;
    std::string rule;
    Duration from, to;
    std::optional<Date> from_date, to_date;
};

struct NotExamined {
    std::vector<StepToDo> steps;
    std::vector<Evidence> unsure;
    std::vector<std::string> history;  ///< open questions: history items that rules ask for
    std::vector<std::string> facts;    ///< sex, gestation, age when not given
};

struct Caution {
    std::string text;
    std::vector<Span> places;
};

struct Provenance {
    std::string id;
    std::string version;
    std::string digest;
};

/// The answer, ordered and self-contained: it outlives the book and the case.
struct Assessment {
    std::string case_id;
    std::string engine;
    Provenance rulebook;
    Provenance ontology;
    std::string hpo_version;
    std::optional<Urgency> urgency;   ///< the highest suggested one
    std::vector<Referral> referrals;  ///< one a service, in book order
    std::vector<MeasureResult> measures;
    std::vector<SetAside> set_aside;
    std::vector<TallyResult> tallies;
    std::vector<ConstellationResult> constellations;  ///< those with at least one item
    std::vector<Evidence> findings;
    NotExamined not_examined;
    std::vector<std::pair<std::string, std::string>> first_steps;  ///< action id and text
    std::vector<FollowUpResult> follow_up;
    std::vector<Caution> cautions;
    bool nothing_examined = false;
};

}  // namespace asterism
