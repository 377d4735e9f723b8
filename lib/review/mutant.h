// SPDX-License-Identifier: MIT
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "compile/compiled.h"

namespace asterism {

enum class MutantKind : std::uint8_t {
    threshold,    ///< a number one step of its last written digit up or down
    dropped,      ///< a condition, an item or a cover left out
    negated,      ///< a condition turned round
    class_moved,  ///< a finding one class milder or graver
    service,      ///< a suggestion to the next service in the book's order
    urgency,      ///< a suggestion one step sooner or later
    merged,       ///< two counting keys made one
};

/// `threshold`, `condition dropped`, ...
std::string_view to_text(MutantKind kind);

/// One single edit of the book.
struct Mutant {
    MutantKind kind = MutantKind::threshold;
    Span place;
    std::string part;  ///< the rule, finding, tally, constellation or key that is edited
    std::string what;  ///< the edit in words
    std::vector<std::string>
        words;  ///< names by which vignettes that may notice it are found first
    std::function<void(Rulebook&)> apply;
    /// Set when nothing but this rule's suggestions change.
    std::optional<RuleId> suggestions_of;
};

/// Every single edit, in the order of the book's parts. Some make a book that the loader refuses.
/// Not edited: texts, sources, first steps, the windows of follow-up, for whom a constellation is
/// listed, the ontology, the norms.
std::vector<Mutant> mutants(CompiledRulebook const& book);

/// The book without its vignettes, cheap to copy.
Rulebook without_vignettes(Rulebook const& book);

/// A condition with one edit.
struct EditedCondition {
    MutantKind kind = MutantKind::threshold;
    Span place;
    std::string what;
    yaml::Node condition;
};

/// Every single edit of a condition: each node negated, each member of a group of two or more left
/// out, each number moved.
std::vector<EditedCondition> edited(yaml::Node const& condition);

/// The text of a number, an age or a gestation, moved by one of its last written unit; nothing
/// when it cannot be.
std::optional<std::string> moved(std::string const& text, int by);

/// Every scalar of a tree that may be a name.
void collect_words(yaml::Node const& node, std::vector<std::string>& words);

}  // namespace asterism
