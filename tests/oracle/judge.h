// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "oracle/oracle.h"
#include "oracle/tables.h"
#include "yaml/node.h"

namespace asterism::oracle {

/// What is made of the things that nobody recorded.
enum class Unrecorded { stays_unknown, is_normal };

/// In whose name a condition is asked.
struct Asker {
    std::vector<Word> const* essential = nullptr;  ///< of a rule
    std::string deriving{};                        ///< the finding whose derivation it is
};

/// Answers taken for granted, to see what would follow: `present x`, or the count of a key.
using Supposed = std::map<std::string, Truth>;

struct Said {
    std::vector<Statement const*> present, absent, unsure;
};

/// What was said of each finding, and the own states worked out so far; the same whoever asks what.
struct States {
    States(Tables const& tables, Case const& baby);

    std::unordered_map<std::string, Said> said;
    std::vector<std::optional<Truth>> own;  ///< by the number of the finding
};

/// Reads one case. Answers to questions about findings and tallies are kept, nothing else is.
class Judge {
public:
    Judge(Tables const& tables, Case const& baby, Numbers const& numbers, States& states,
          Unrecorded unrecorded, Supposed supposed = {});

    Truth holds(yaml::Node const& condition, Asker const& asker);
    Truth present(std::string const& finding, Asker const& asker);
    Truth present(FindingText const& finding, Asker const& asker);
    Bounds tally(std::string const& id);
    Truth reached(std::string const& constellation);
    /// The questions on which a count hangs although what it counts is there.
    std::vector<std::string> open_questions();

private:
    // findings.cpp
    Truth own(FindingText const& finding);
    Truth work_out_own(FindingText const& finding) const;
    Truth own_for(FindingText const& finding, Asker const& asker);
    Truth unknown_for(FindingText const& finding, Asker const& asker) const;
    Truth derivation(FindingText const& finding);
    bool decided_by_measure(FindingText const& finding) const;
    void note_comparable(yaml::Node const& condition, std::map<std::string, bool>& measures) const;
    bool wholly_absent(std::string const& finding) const;
    bool other_sex(Finding const& finding) const;
    Said const& said(std::string const& finding) const;

    // sides_and_grades.cpp
    Truth finding_test(std::string const& id, yaml::Node const* side, yaml::Node const* grade,
                       Asker const& asker);
    Truth on_side(std::string const& finding, std::string const& side, Asker const& asker);
    Truth on(FindingText const& finding, Sides side, Asker const& asker);
    Truth said_on(FindingText const& finding, Sides side, Asker const& asker);
    Truth graded(std::string const& finding, std::vector<std::string> const& grades,
                 Asker const& asker);
    Truth graded_on(std::string const& finding, std::string const& side,
                    std::vector<std::string> const& grades, Asker const& asker);
    Truth if_nobody_said(FindingText const& finding, Asker const& asker);

    // conditions.cpp
    std::vector<Truth> all_of(yaml::Node const& list, Asker const& asker);
    Truth tally_test(yaml::Node const& condition);
    Truth measure_test(yaml::Node const& condition, Asker const& asker);
    std::optional<Truth> compare(yaml::Node const& condition) const;
    std::optional<Interval> band(std::string const& measure, std::string const& statistic,
                                 std::string const& norm) const;
    Truth age_test(yaml::Node const& bounds) const;
    Truth gestation_test(yaml::Node const& bounds) const;
    Truth sex_test(std::string const& sex) const;

    // counts.cpp
    Truth counts(Member const& member);
    Truth any_counts(std::vector<Member> const& members);
    Truth major_counts(std::vector<Member> const& members);
    Truth covered(std::string const& field);
    Bounds count_keys(ClassSet classes);
    Bounds add_points(std::vector<ScoreItem const*> const& items);
    bool familial(std::string const& finding) const;

    Tables const& tables_;
    Case const& baby_;
    Numbers const& numbers_;
    States& states_;
    Unrecorded unrecorded_;
    Supposed supposed_;
    std::vector<std::optional<Truth>> present_;  ///< by the number of the finding
    std::vector<std::optional<Truth>> derived_;
    std::unordered_map<std::string, Bounds> tally_;
    std::unordered_map<std::string, Truth> reached_;
};

/// What a question about a key's count is called; a key that is one plain finding is that finding.
std::string question_of(std::vector<Member> const& members);

}  // namespace asterism::oracle
