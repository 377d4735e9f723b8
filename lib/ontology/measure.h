// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/source.h"
#include "ontology/finding.h"

namespace asterism {

/// What a number is read from. Only tape, ruler and scale have a reading error of half their
/// resolution.
enum class Instrument : std::uint8_t { tape, ruler, scale, counter, meter };

/// The range of values a living newborn can have, in the measure's own unit; beyond it is a slip of
/// the pen.
struct PlausibleRange {
    double from = 0;
    double to = 0;
};

/// How a measure follows from others.
enum class Formula : std::uint8_t {
    z_difference,
    difference,
    absolute_difference,
    mean,
    percent,
    ratio
};

/// A measure that is worked out of two others and never read off an instrument.
struct Computation {
    Formula formula = Formula::difference;
    Word first_name;
    Word second_name;

    MeasureId first = 0;
    MeasureId second = 0;
};

/// A number with a unit that the examiner takes.
struct Measure {
    Word id;
    Word step_name;
    std::string label;
    std::string unit;                ///< the unit of norms and thresholds
    std::vector<std::string> units;  ///< the units accepted on input
    PlausibleRange plausible;
    std::vector<Word> synonyms;
    std::vector<Word> ambiguous;
    std::optional<Instrument> instrument;  ///< none for a measure that is only computed
    std::optional<Computation> computed;
    double resolution = 0;  ///< smallest division of the instrument, in `unit`
    bool soft = false;      ///< no referral may rest on it alone

    StepId step = 0;
};

/// A reference that a class, rule, norm or prevalence cites.
struct Citation {
    Word id;
    std::string authors;
    std::string title;
    std::string journal;
    std::string pages;
    std::string doi;
    std::string note;
    int year = 0;
    std::string read;  ///< how much was read: full text, abstract, secondary, memory
};

/// How common a finding is among newborns, as published.
struct Prevalence {
    Word finding_name;
    double per_10000 = 0;
    std::string population;
    std::vector<Word> sources;
    std::string note;

    FindingId finding = 0;
};

}  // namespace asterism
