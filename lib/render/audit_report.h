// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "audit/audit.h"

namespace asterism {

inline constexpr auto audit_schema = "asterism.audit/1";

/// An audit and what it was made from.
struct AuditReport {
    audit::Audit const& audit;
    audit::AuditedBabies const& babies;
    audit::CasesPlan const& plan;
    std::string cases;      ///< name of the file
    std::string decisions;  ///< the same; empty when they stand in the cases
};

std::string audit_text(AuditReport const& report, bool colour);
nlohmann::ordered_json audit_json(AuditReport const& report);
/// One row a figure: `part,service,by,value,figure,count,total,share,low,high`, disagreements with
/// their case and words. A cell that a spreadsheet could take for a formula is made a text.
std::string audit_csv(AuditReport const& report);
/// One self-contained page with pictures of the intervals and of the course over time.
std::string audit_html(AuditReport const& report);

/// A CSV cell, quoted where needed; a text that starts like a formula (`=`, `+`, `-`, `@`, tab,
/// carriage return) gets an apostrophe before it.
std::string csv_cell(std::string_view text);

// Words and figures that the writers share; plain, each writer escapes them.
namespace audit_words {

struct Figure {
    std::string_view id;     ///< sensitivity
    std::string_view label;  ///< sensitivity: suggested referrals that were made
    audit::Proportion share;
};

/// Sensitivity, specificity and predictive values, those whose cells are all shown.
std::vector<Figure> figures(audit::ServiceTable const& table, std::vector<bool> const& shown);

struct AgreementFigure {
    std::string_view id;
    std::string_view label;
    audit::Coefficient coefficient;
};
/// Cohen's kappa and Gwet's AC1 where they have a value.
std::vector<AgreementFigure> coefficients(audit::ServiceTable const& table);

/// `12,345`, or `hidden` for a cell that is not shown.
std::string cell(audit::ServiceTable const& table, std::vector<bool> const& shown, std::size_t row,
                 std::size_t column);
std::string number(std::uint64_t count);
std::string percent(double share);
/// `91.4 % (89.7 to 92.8; 1,100 of 1,204)`
std::string percent(audit::Proportion const& share);
/// `0.70 (0.52 to 0.88), substantial`
std::string coefficient(audit::Coefficient const& value);
/// What rarity and one-sidedness do to the coefficients of this table.
std::vector<std::string> notes(audit::ServiceTable const& table);
/// Nothing was suggested, left open or referred.
bool quiet(audit::ServiceAudit const& service);
/// `emergency or same day: on the day of the exam`
std::string allowed(Urgency urgency);
/// `3 of 4 in time, 1 late; median 2 days, longest 20`
std::string delays(audit::Delays const& delays);
/// What stands at the head: babies, decisions, what was left out.
std::vector<std::string> counts(AuditReport const& report);
/// `newborn 0.2.0, in force from 2027-03-01: 1,234 babies`
std::vector<std::string> books(AuditReport const& report);
/// How to read the report.
std::vector<std::string> reading(AuditReport const& report);
/// The date of a baby's exam, or nothing.
std::string day(audit::AuditedBaby const& baby);
std::string_view rows(std::size_t row);

}  // namespace audit_words

}  // namespace asterism
