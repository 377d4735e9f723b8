// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "audit/agreement.h"
#include "audit/babies.h"
#include "audit/control_chart.h"

namespace asterism::audit {

/// Book by decision. The book is the reference and the clinician's decision the test; what the
/// book leaves unsettled is kept apart and enters no figure.
struct ServiceTable {
    enum Row : std::size_t { suggested, unsettled, not_suggested };
    enum Column : std::size_t { referred, not_referred };

    std::array<std::array<std::uint64_t, 2>, 3> cells{};

    void add(JudgedService const& judged);
    std::uint64_t total() const;
    std::vector<std::uint64_t> list() const;  ///< row by row

    std::uint64_t agreed() const { return cells[suggested][referred]; }
    std::uint64_t missed() const { return cells[suggested][not_referred]; }
    std::uint64_t not_indicated() const { return cells[not_suggested][referred]; }
    std::uint64_t rightly_not() const { return cells[not_suggested][not_referred]; }
    FourCells settled() const { return {agreed(), missed(), not_indicated(), rightly_not()}; }

    Proportion sensitivity() const { return {agreed(), agreed() + missed()}; }
    Proportion specificity() const { return {rightly_not(), rightly_not() + not_indicated()}; }
    Proportion positive_value() const { return {agreed(), agreed() + not_indicated()}; }
    Proportion negative_value() const { return {rightly_not(), rightly_not() + missed()}; }
};

/// How soon the suggested referrals of one urgency were made. The exam's hour is not known, so
/// time is in whole days: emergency and same day are in time on the exam day, urgent within 14
/// days, routine has no limit.
struct Delays {
    std::uint64_t in_time = 0, late = 0;
    std::uint64_t before_exam = 0;  ///< dated before the exam
    std::uint64_t undated = 0;
    std::uint64_t missed = 0;
    std::vector<std::int32_t> days;  ///< of the dated ones from the exam on, sorted

    std::uint64_t referred() const { return in_time + late + before_exam + undated; }
    std::optional<double> median() const;
};

/// The last day, counted from the exam, that is in time; nothing for routine.
std::optional<int> days_allowed(Urgency urgency);

struct ServiceAudit {
    std::string id;
    std::string label;
    ServiceTable table;
    std::uint64_t undecided = 0;   ///< babies of the audit without a decision on it
    std::array<Delays, 4> delays;  ///< by Urgency
    std::vector<bool> shown;       ///< cells of `table`; all unless small ones are hidden
    bool withheld = false;         ///< nothing of the table may be shown
    bool complete() const;         ///< every cell is shown
};

/// The babies with one value of a column.
struct Stratum {
    std::string value;
    std::vector<ServiceTable> services;  ///< by Services
    std::vector<bool> shown;             ///< by Services
};

struct StrataOf {
    std::string column;
    std::vector<Stratum> strata;  ///< by value
};

/// A referral that book and clinician see differently.
struct Disagreement {
    std::size_t baby = 0;  ///< in AuditedBabies
    std::size_t service = 0;
    Urgency urgency = Urgency::routine;  ///< of a missed one
    std::vector<std::string> reasons;    ///< missed: why it is suggested; else what came nearest
    std::vector<std::string> rules;
    std::string findings;  ///< what was found in the baby
};

struct Audit {
    std::vector<ServiceAudit> services;
    std::vector<StrataOf> strata;
    std::vector<Disagreement> missed;         ///< most urgent first, then by day and line
    std::vector<Disagreement> not_indicated;  ///< by day and line
    std::uint64_t missed_in_all = 0, not_indicated_in_all = 0;  ///< before the lists were cut
    ControlChart missed_chart;         ///< share of suggested referrals not made, by month
    ControlChart not_indicated_chart;  ///< share of referrals not suggested, by month
    std::vector<std::string> charted;  ///< services that the charts count
    std::uint64_t babies = 0, decided = 0, refused = 0;
    std::vector<std::string> without_decision;  ///< cases
    std::vector<std::string> without_case;      ///< cases that only the decisions name
    std::uint64_t decisions_without_case = 0;
    std::vector<std::uint64_t> by_book;  ///< babies, by Books
    std::uint64_t least = 0;             ///< counts below are suppressed; 0: none
};

struct AuditOptions {
    std::vector<std::string> by;  ///< `month` or columns of the cases
    std::size_t listed = 100;     ///< disagreements listed of each kind, with reasons
    std::uint64_t least = 0;      ///< suppress counts below; 0 or at least 2
};

/// Everything that is counted. Pure: the reasons of listed disagreements are worked out by the
/// engine itself.
Audit audit(AuditedBabies const& babies, CasesPlan const& plan, AuditOptions const& options);

}  // namespace asterism::audit
