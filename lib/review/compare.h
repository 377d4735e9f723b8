// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "assess/assessment.h"
#include "review/difference.h"

namespace asterism {

/// Babies to judge by both books.
struct CaseSet {
    enum class Origin : std::uint8_t { files, vignettes, newborns };
    struct Baby {
        Case baby;
        std::string story;
    };

    Origin origin = Origin::files;
    std::string title;  ///< "vignettes", "simulated newborns, seed 1"
    std::vector<Baby> babies;
};

/// The vignettes of both books; one that both have is taken from the later. Problems of a vignette
/// leave it out.
CaseSet vignettes_of(CompiledRulebook const& before, CompiledRulebook const& after,
                     Diagnostics& diagnostics);

/// Newborns simulated from the published prevalences, by the classes of the later book.
CaseSet simulated(CompiledRulebook const& book, std::size_t babies, std::uint64_t seed);

/// How one service's answer changed. A settled answer that stays the same by other rules is told
/// as `reasons`.
enum class ChangeKind : std::uint8_t { gained, lost, sooner, later, opened, settled, reasons };

std::string_view to_text(ChangeKind kind);

/// What one book says of one service.
struct ServiceAnswer {
    Verdict verdict = Verdict::not_suggested;
    std::optional<Urgency> urgency;
    std::vector<std::string> rules;  ///< that decide a suggestion, or leave the answer open
};

struct ServiceChange {
    std::string service;
    ChangeKind kind = ChangeKind::gained;
    ServiceAnswer before, after;

    /// The rules that made the difference: those of the book that suggests it (or leaves it open);
    /// when both suggest it, those that decide on one side only, or else all of them.
    std::vector<std::string> by() const;
};

struct BabyChange {
    std::string baby;
    std::string story;     ///< of a vignette
    std::string findings;  ///< what was recorded as present, in words
    std::vector<ServiceChange> changes;
};

/// Changes of one kind for one service by the same rules.
struct ChangeCount {
    std::string service;
    ChangeKind kind = ChangeKind::gained;
    std::vector<std::string> by;
    std::size_t babies = 0;
};

struct CaseSetComparison {
    CaseSet::Origin origin = CaseSet::Origin::files;
    std::string title;
    std::size_t babies = 0;
    std::vector<BabyChange> changed;  ///< in the order of the cases
    std::vector<ChangeCount> counts;  ///< most babies first
};

struct BookIdentity {
    std::string id, version, effective, digest;
};

/// Two books side by side. Self-contained: no reference into either book is kept.
struct BookComparison {
    BookIdentity before, after;
    std::string ontology_version, ontology_digest;
    std::vector<Difference> differences;
    std::vector<CaseSetComparison> sets;

    bool any_change() const;
};

/// Compares what is written and how the cases are judged. Both books must be compiled with the same
/// ontology, with which the cases were read.
BookComparison compare(CompiledRulebook const& before, CompiledRulebook const& after,
                       std::vector<CaseSet> const& sets);

}  // namespace asterism
