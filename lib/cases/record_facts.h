// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>

#include "base/diagnostic.h"
#include "cases/imported.h"

namespace asterism {

/// `P3W`, `P0D`, `PT26H`, `P1Y2M3DT4H` in whole hours (a year has 365.25 days, a month a twelfth of
/// that). A bare `P`, fractions and negative spans are refused.
Parsed<Duration> parse_iso_duration(std::string_view text);
std::string to_iso_duration(Duration duration);

/// The date of an RFC 3339 time or date.
Parsed<Date> date_of_timestamp(std::string_view text);

/// Gestation at birth out of a number and a UCUM unit: whole days, or whole weeks for a band.
/// Fractions are refused: 37.3 may mean 37 weeks 3 days or 37.3 weeks.
Parsed<Gestation> gestation_of_quantity(std::string_view number, std::string_view unit);

/// Adds a measured value unless the measure has one already, which is then listed as left out.
/// Units and ranges are checked as in any case.
void add_measure(std::string_view measure_id, Word const& number, std::string const& unit,
                 Ontology const& ontology, ImportedCase& result, Diagnostics& diagnostics);

}  // namespace asterism
