// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "audit/services.h"
#include "base/diagnostic.h"
#include "base/time.h"

namespace asterism::audit {

enum class Decision : std::uint8_t { unknown, not_referred, referred };

/// What was decided on one baby and one service.
struct DecidedService {
    std::size_t service = 0;
    bool referred = false;
    std::optional<Date> on;  ///< the day of the referral
};

/// The decisions on one baby. With `complete`, a service that is not named was not referred to;
/// otherwise nobody knows.
struct CaseDecisions {
    std::vector<DecidedService> services;
    bool complete = false;
    std::uint64_t line = 0;  ///< of the file of decisions: its first row
};

struct TextHash {
    using is_transparent = void;
    std::size_t operator()(std::string_view text) const {
        return std::hash<std::string_view>()(text);
    }
};

/// A file of decisions, by case.
class DecisionFile {
public:
    /// Null for a case that the file does not name.
    CaseDecisions const* find(std::string_view id) const;
    std::unordered_map<std::string, CaseDecisions, TextHash, std::equal_to<>> const& all() const {
        return all_;
    }
    std::uint64_t rows() const { return rows_; }

private:
    friend class DecisionReader;
    std::unordered_map<std::string, CaseDecisions, TextHash, std::equal_to<>> all_;
    std::uint64_t rows_ = 0;
};

enum class DecisionFormat { csv, json_lines };

/// Reads decisions: CSV with the columns `case`, `service`, `referred` (yes or no) and, if days are
/// known, `at` or `on` (a date, or a date and a time whose day counts), or JSON lines with the same
/// keys.
/// The service `none` says that the baby was referred to no service at all. Every problem is
/// reported with its place: unknown services and columns with the nearest names, a service decided
/// twice for one baby with both places. After an error the file is of no use.
DecisionFile read_decisions(std::string name, std::string text, DecisionFormat format,
                            Services const& services, Diagnostics& diagnostics);

}  // namespace asterism::audit
