// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "yaml/node.h"

namespace asterism {

/// What a person typed as flags, before it becomes a case.
struct CaseArguments {
    std::vector<std::string> findings;  ///< `low-set ears; right; familial`
    std::vector<std::string> absent;
    std::vector<std::string> unsure;
    std::vector<std::string> measures;  ///< `head-circumference=31 cm`
    std::vector<std::string> history;
    std::vector<std::string> examined;  ///< `all`, a step, a region, or `except=hips`
    std::string id, sex, gestation, age, born, examined_on;

    bool empty() const;
};

/// The pieces between separators, trimmed, each with its place.
std::vector<Word> split_words(Word const& whole, char separator);
/// `low-set ears; right; familial`
yaml::Node statement_from_text(Word const& argument);
/// `except=hips`, `all`, or several names with commas between.
void examined_from_text(Word const& argument, std::vector<yaml::Node>& items);
/// `head-circumference=31 cm`
yaml::Entry measure_from_text(Word const& argument);

/// Builds the tree that a case file would give, so that flags and files share one reader. Each
/// argument is a line of a source called `<arguments>`, so that errors are placed as
/// `<arguments>:N:column`.
yaml::Node case_from_arguments(CaseArguments const& arguments);

}  // namespace asterism
