// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace asterism {

/// A LOINC code and the measure of ours that it names. Several codes may name one measure; the
/// first is the one written.
struct LoincMeasure {
    std::string_view code;
    std::string_view measure;
    std::string_view display;
};

/// Gestation at birth: the convention of this project for phenopackets and FHIR alike is a
/// measurement with this code, in whole days (`d`), or in whole weeks (`wk`) when days are unknown.
inline constexpr std::string_view loinc_gestation = "76516-4";
inline constexpr std::string_view loinc_gestation_display = "Gestational age--at birth";
/// Age at the examination, in `h`, `d`, `wk`, `mo` or `a`.
inline constexpr std::string_view loinc_age = "30525-0";

/// The measure for a code, or nothing.
LoincMeasure const* measure_of_loinc(std::string_view code);
/// The code to write for a measure, or null.
LoincMeasure const* loinc_of_measure(std::string_view measure_id);

/// Our spelling of a unit in UCUM (`[in_i]` -> `in`) or the Units of Measurement Ontology
/// (`UO:0000015` -> `cm`), with or without a prefix `UCUM:`; other text as it is.
std::string unit_of_ucum(std::string_view code);
/// The UCUM code of a unit of ours; empty when there is none.
std::string ucum_of_unit(std::string_view unit);

}  // namespace asterism
