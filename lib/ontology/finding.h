// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/source.h"

namespace asterism {

/// Dense positions in the ontology's tables, in the order of the files.
using FindingId = std::uint32_t;
using StepId = std::uint32_t;
using RegionId = std::uint32_t;
using MeasureId = std::uint32_t;

enum class Sex : std::uint8_t { not_given, female, male, undetermined };

std::string_view to_text(Sex sex);

enum class Laterality : std::uint8_t { none, paired };

/// A part of the body, in head-to-toe order, or the history.
struct Region {
    Word id;
    std::string label;
    bool history = false;
};

/// One thing that the examiner does. `essential`: its omission could hide something dangerous.
struct ExamStep {
    Word id;
    Word region_name;
    std::string label;
    std::string how;
    bool essential = false;
    bool result = false;  ///< known from a test, not seen at the bedside; `all` does not include it
    RegionId region = 0;
};

/// One observable thing. The ontology says what it is and how to see it; a rulebook says what it
/// means.
struct Finding {
    Word id;
    Word step_name;
    Word parent_name;
    std::string label;
    std::string recognise;
    std::vector<Word> synonyms;
    std::vector<Word> ambiguous;  ///< names that other findings carry too
    std::vector<Word> outdated;   ///< accepted on input, never printed
    std::vector<Word> hpo;        ///< Human Phenotype Ontology ids; empty when none fits
    std::vector<Word> grades;     ///< from least to most severe
    std::string icd10;
    Laterality laterality = Laterality::none;
    Sex sex = Sex::not_given;  ///< the only sex in which the finding can occur, if any

    StepId step = 0;
    std::optional<FindingId> parent;
    std::vector<FindingId> children;
    /// Told or reported, not examined: a history item or the result of a test. Not being recorded
    /// leaves no rule open unless the rule says so.
    bool history = false;
};

}  // namespace asterism
