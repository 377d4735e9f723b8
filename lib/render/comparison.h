// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include <nlohmann/json_fwd.hpp>

#include "review/compare.h"

namespace asterism {

inline constexpr auto comparison_schema = "asterism.comparison/1";

/// For a terminal: what is written differently, then which babies are judged differently.
std::string comparison_text(BookComparison const& comparison, bool colour);
/// One self-contained page.
std::string comparison_html(BookComparison const& comparison);
nlohmann::ordered_json comparison_json(BookComparison const& comparison);

// Words that both writers for people share; plain, each writer escapes them for its format.

/// `newborn 0.2.0, in force from 2027-03-01 (a44be8cd)`.
std::string book_words(BookIdentity const& book);
/// `genetics no longer suggested (was urgent, by pattern-x)`.
std::string change_words(ServiceChange const& change);
/// `genetics no longer suggested, by pattern-x`.
std::string count_words(ChangeCount const& count);
/// `condition`, `new`, `gone`: what of a thing is different.
std::string aspect_words(Difference const& difference);
/// `1,806 vignettes: 4 are judged differently`.
std::string set_words(CaseSetComparison const& set);
/// The heading under which differences of a part stand: `rules`, `classes`.
std::string part_words(std::string const& part);

/// Changed babies shown one by one for a set of simulated newborns; of other sets all are.
inline constexpr std::size_t newborns_shown = 5;

}  // namespace asterism
