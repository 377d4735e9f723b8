// SPDX-License-Identifier: MIT
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "oracle/subject.h"

namespace asterism::oracle {

/// A small book, and what the cases that can tell its readers apart must speak of.
struct SmallBook {
    std::string text;
    std::vector<std::string> axes;
};

using VisitBook = std::function<void(SmallBook const&)>;

/// A rule for each condition of two things out of the whole language.
void books_of_pairs(VisitBook const& visit);
/// A rule for each condition of conditions, over one thing of each kind.
void books_of_nested_pairs(VisitBook const& visit);
/// Each way of classing three findings, with and without keys that cover others.
void books_of_classes(VisitBook const& visit);
/// Ways to derive a finding, red flag or not, and to ask for it.
void books_of_derivations(VisitBook const& visit);

}  // namespace asterism::oracle
