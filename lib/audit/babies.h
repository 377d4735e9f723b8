// SPDX-License-Identifier: MIT
#pragma once

#include <atomic>
#include <limits>
#include <string>
#include <vector>

#include "audit/decisions.h"
#include "batch/fast_judge.h"
#include "batch/line_source.h"
#include "cases/csv_record.h"

namespace asterism::audit {

/// What the book says of one baby and one service, and what was decided.
struct JudgedService {
    static constexpr std::int32_t no_days = std::numeric_limits<std::int32_t>::min();

    Verdict verdict = Verdict::not_suggested;
    Urgency urgency = Urgency::routine;  ///< of a suggested verdict
    Decision decision = Decision::unknown;
    bool in_book = false;         ///< the book in force knows the service
    std::int32_t days = no_days;  ///< from the exam to a dated referral

    bool missed() const {
        return verdict == Verdict::suggested && decision == Decision::not_referred;
    }
    bool not_indicated() const {
        return verdict == Verdict::not_suggested && decision == Decision::referred;
    }
};

/// One baby of the audit.
struct AuditedBaby {
    std::string id;
    std::uint64_t line = 0;  ///< of the file of cases
    Date day{};
    std::size_t book = 0;
    bool decided = false;  ///< there is any decision on the baby
    std::vector<JudgedService> services;
    std::vector<std::string> columns;  ///< by `CaseColumns::named`; empty: not given
    std::string text;                  ///< its line, kept when book and decision disagree
};

/// A line that is no baby of the audit, kept to say why.
struct RefusedLine {
    std::uint64_t line = 0;
    std::string code;  ///< with a message; without one the readers tell what is wrong
    std::string message;
    std::string text;  ///< what stands in the file, for the readers; empty: they know no more
    std::string id{};  ///< the case, where it is known
    std::uint32_t at = 0, size = 0;  ///< bytes of the text that the message speaks of
};

struct AuditedBabies {
    std::vector<AuditedBaby> babies;  ///< in order of the file
    std::vector<RefusedLine> refused;
    std::string failure;                  ///< why reading ended early
    Diagnostics placed_failure;           ///< the same, at its places, where they are known
    std::shared_ptr<CsvForm const> form;  ///< of CSV: what the columns mean
};

/// Columns (keys) of the cases that are not the examination's.
struct CaseColumns {
    std::vector<std::string> named;    ///< kept, to group by
    std::vector<std::string> ignored;  ///< passed over

    bool has(std::string_view name) const;
};

struct CasesPlan {
    Books const& books;
    DecisionFile const* decisions = nullptr;  ///< null: decisions stand in the cases
    /// A service that the file does not name for a baby was not referred to; and so for a baby
    /// that it does not name at all.
    bool unlisted_not_referred = false;
    CaseColumns columns;
    bool day_needed = true;  ///< false: one book for all, babies without a day are taken too
};

/// Reads, judges and joins with the decisions, with some threads; the result does not depend on
/// their number.
AuditedBabies read_babies(batch::LineSource& source, CasesPlan const& plan, unsigned jobs,
                          std::atomic<bool> const& stop);

/// The problems of refused lines, each at its place in the file.
Diagnostics problems(AuditedBabies const& babies, CasesPlan const& plan, std::string const& name);

/// Rows of CSV, one a baby or one a finding, as JSON lines: the columns of `assess --batch` and
/// those of `columns`, which speak of the baby. `name` is the file's.
std::unique_ptr<batch::LineSource> csv_cases(batch::ReadBytes read, CaseColumns const& columns,
                                             std::string name);

}  // namespace asterism::audit
