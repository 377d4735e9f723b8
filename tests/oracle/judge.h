// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "oracle/oracle.h"
#include "oracle/tables.h"

namespace asterism::oracle {

/// What is made of the things that nobody recorded.
enum class Unrecorded { stays_unknown, is_normal };

/// In whose name a condition is asked.
struct Asker {
    std::vector<FindingText const*> const* essential = nullptr;  ///< of a rule
    FindingText const* deriving = nullptr;                       ///< whose derivation it is
};

/// Truths that are worked out when they are first asked for.
using Remembered = std::vector<std::optional<Truth>>;

/// Answers to questions of the counting taken for granted, to see what would follow; by the
/// question's number, or empty.
using Supposed = Remembered;

/// What was said of one finding.
struct Said {
    std::vector<Statement const*> present, absent, unsure;
    bool wholly_absent = false;  ///< absent without a side, or on both
    bool familial = false;
};

/// What was said of each finding, and the own states worked out so far; the same whoever asks what.
class States {
public:
    States(Tables const& tables, Case const& baby);

    Said const& said(FindingText const& finding) const { return said_[place_[finding.number]]; }

    Remembered own;  ///< by the number of the finding

private:
    Said& place_for(FindingId finding);

    std::vector<std::uint16_t> place_;  ///< by the number of the finding
    std::vector<Said> said_;            ///< the first is of all those that nobody spoke of
};

/// Reads one case. Answers are kept, since many ask the same.
class Judge {
public:
    Judge(Tables const& tables, Case const& baby, Numbers const& numbers, States& states,
          Unrecorded unrecorded, Supposed supposed = {});

    Truth holds(ConditionText const& condition, Asker const& asker);
    Truth present(FindingText const& finding, Asker const& asker);
    Bounds tally(std::size_t number);
    Truth reached(std::size_t constellation);
    /// The questions on which a count hangs although what it counts is there.
    std::vector<std::size_t> open_questions();

private:
    // findings.cpp
    Truth own(FindingText const& finding);
    Truth work_out_own(FindingText const& finding) const;
    Truth own_for(FindingText const& finding, Asker const& asker);
    Truth unknown_for(FindingText const& finding, Asker const& asker) const;
    Truth derivation(FindingText const& finding);
    bool decided_by_measure(FindingText const& finding) const;
    bool comparable(FindingText const& finding, std::size_t measure) const;
    bool other_sex(Finding const& finding) const;
    Said const& said(FindingText const& finding) const { return states_.said(finding); }

    // sides_and_grades.cpp
    Truth finding_test(ConditionText const& condition, Asker const& asker);
    Truth at_place(FindingText const& finding, Place place, Asker const& asker);
    Truth on(FindingText const& finding, Sides side, Asker const& asker);
    Truth said_on(FindingText const& finding, Sides side, Asker const& asker);
    Truth graded(FindingText const& finding, std::vector<std::uint32_t> const& grades,
                 Asker const& asker);
    Truth graded_at(FindingText const& finding, Place place,
                    std::vector<std::uint32_t> const& grades, Asker const& asker);
    Truth if_nobody_said(FindingText const& finding, Asker const& asker);

    // conditions.cpp
    Truth kind_holds(ConditionText const& condition, Asker const& asker);
    Truth every(std::vector<ConditionText> const& parts, Asker const& asker);
    Truth some(std::vector<ConditionText> const& parts, Asker const& asker);
    Truth at_least(std::size_t wanted, std::vector<ConditionText> const& parts, Asker const& asker);
    Truth tally_test(ConditionText const& condition);
    Truth measure_test(ConditionText const& condition, Asker const& asker);
    std::optional<Truth> compare(ConditionText const& condition) const;
    std::optional<Interval> band(ConditionText const& condition) const;
    Truth age_test(ConditionText const& condition) const;
    Truth gestation_test(ConditionText const& condition) const;
    Truth sex_test(Sex sex) const;

    // counts.cpp
    Truth counts(Member const& member);
    Truth any_counts(Members const& members);
    Truth major_counts(Members const& members);
    Truth covered(CountedKeyText const& key);
    Truth key_counts(CountedKeyText const& key);
    Bounds add_up(TallyText const& text);

    Tables const& tables_;
    Case const& baby_;
    Numbers const& numbers_;
    States& states_;
    Unrecorded unrecorded_;
    Supposed supposed_;
    Remembered present_;  ///< by the number of the finding
    Remembered derived_;
    Remembered counted_;  ///< by the number of the list of members
    Remembered reached_;
    std::vector<std::optional<Bounds>> tally_;
};

}  // namespace asterism::oracle
