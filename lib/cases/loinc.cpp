// SPDX-License-Identifier: MIT
// LOINC codes of the measures that every ward takes, and units. Codes from the public LOINC tables;
// UCUM codes from its specification.
#include "cases/loinc.h"

#include <algorithm>
#include <array>
#include <utility>

namespace asterism {

namespace {

constexpr std::array measures{
    LoincMeasure{"9843-4", "head-circumference", "Head Occipital-frontal circumference"},
    LoincMeasure{"8287-5", "head-circumference",
                 "Head Occipital-frontal circumference by Tape measure"},
    LoincMeasure{"8302-2", "length", "Body height"},
    LoincMeasure{"8306-3", "length", "Body height --lying"},
    LoincMeasure{"29463-7", "weight", "Body weight"},
    LoincMeasure{"3141-9", "weight", "Body weight Measured"},
    LoincMeasure{"8339-4", "weight", "Birth weight Measured"},
    LoincMeasure{"9279-1", "respiratory-rate", "Respiratory rate"},
    LoincMeasure{"8867-4", "heart-rate", "Heart rate"},
};

using Pair = std::pair<std::string_view, std::string_view>;

// The first of several spellings is the one written.
constexpr std::array units{
    Pair{"cm", "cm"},
    Pair{"mm", "mm"},
    Pair{"[in_i]", "in"},
    Pair{"g", "g"},
    Pair{"kg", "kg"},
    Pair{"[lb_av]", "lb"},
    Pair{"[oz_av]", "oz"},
    Pair{"%", "%"},
    Pair{"/min", "/min"},
    Pair{"{beats}/min", "/min"},
    Pair{"{breaths}/min", "/min"},
    Pair{"mm[Hg]", "mmHg"},
    Pair{"deg", "degrees"},
    Pair{"UO:0000015", "cm"},
    Pair{"UO:0000016", "mm"},
    Pair{"UO:0000021", "g"},
    Pair{"UO:0000009", "kg"},
};

}  // namespace

LoincMeasure const* measure_of_loinc(std::string_view code) {
    auto const found = std::find_if(measures.begin(), measures.end(),
                                    [&](LoincMeasure const& m) { return m.code == code; });
    return found == measures.end() ? nullptr : &*found;
}

LoincMeasure const* loinc_of_measure(std::string_view measure_id) {
    auto const found = std::find_if(measures.begin(), measures.end(),
                                    [&](LoincMeasure const& m) { return m.measure == measure_id; });
    return found == measures.end() ? nullptr : &*found;
}

std::string unit_of_ucum(std::string_view code) {
    constexpr std::string_view prefix = "UCUM:";
    if (code.starts_with(prefix)) code.remove_prefix(prefix.size());
    for (auto const& [ucum, ours] : units) {
        if (ucum == code) return std::string(ours);
    }
    return std::string(code);
}

std::string ucum_of_unit(std::string_view unit) {
    for (auto const& [ucum, ours] : units) {
        if (ours == unit) return std::string(ucum);
    }
    return {};
}

}  // namespace asterism
