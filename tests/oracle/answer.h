// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/truth.h"
#include "rulebook/rulebook.h"

namespace asterism::oracle {

/// What is said of one service. Verdicts are the words that the program prints.
struct ServiceAnswer {
    std::string verdict;
    std::optional<Urgency> urgency;             ///< of a suggested verdict
    std::optional<Urgency> may_rise_to;         ///< of a suggested verdict
    std::optional<std::string> if_rest_normal;  ///< of an unsettled verdict

    friend bool operator==(ServiceAnswer const&, ServiceAnswer const&) = default;
};

/// The least and the most that a tally can be, in tenths.
struct Bounds {
    std::int64_t low = 0;
    std::int64_t high = 0;
    /// What is printed as the least: with nothing found that would take the place of what counts
    /// now.
    std::int64_t counted = 0;

    friend bool operator==(Bounds const&, Bounds const&) = default;
};

/// Everything that oracle and engine must agree on.
struct Answer {
    std::vector<ServiceAnswer> services;  ///< in the order of the book
    std::vector<Bounds> tallies;          ///< in the order of `tally_names`
    std::vector<Truth> constellations;    ///< in the order of the book
    std::vector<Truth> present;           ///< in the order of the ontology

    friend bool operator==(Answer const&, Answer const&) = default;
};

/// The tallies of a book in the order written: its own, then each constellation's with those of its
/// named groups.
std::vector<std::string> tally_names(Rulebook const& book);

/// Where two answers differ, one line each: `genetics: oracle suggested urgent, engine unsettled`.
std::vector<std::string> differences(Answer const& oracle, Answer const& engine,
                                     Rulebook const& book,
                                     std::vector<std::string> const& findings);

/// A service's answer in one line, for messages and for telling distinct answers apart.
std::string to_text(ServiceAnswer const& answer);

}  // namespace asterism::oracle
