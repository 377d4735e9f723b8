// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "compile/compiled.h"

namespace asterism {

/// One named thing of a book with everything that is said of it, in words.
struct BookItem {
    std::string id;
    std::string label;
    Span span;
    std::string whole;  ///< the thing in one phrase, for when it is new or gone
    std::vector<std::pair<std::string, std::string>> aspects;
    std::vector<std::pair<std::string, ConditionPtr>> conditions;  ///< by aspect
};

/// A kind of thing in a book: `rule` with every rule.
struct BookPart {
    std::string name;
    std::vector<BookItem> items;
};

/// Every part of a book, in the order in which a book is written.
std::vector<BookPart> parts_of(CompiledRulebook const& book);

}  // namespace asterism
