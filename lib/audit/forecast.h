// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "audit/proportion.h"
#include "compile/compiled.h"
#include "review/newborns.h"

namespace asterism::audit {

/// What a book says of one service for the simulated babies.
struct ServiceForecast {
    std::string id;
    std::string label;
    std::uint64_t suggested = 0;
    std::uint64_t unsettled = 0;
    std::array<std::uint64_t, 4> by_urgency{};  ///< suggested ones
    std::optional<std::uint64_t>
        before;                          ///< suggested by the earlier book; it may lack the service
    std::uint64_t gained = 0, lost = 0;  ///< babies, against the earlier book
};

struct Forecast {
    std::uint64_t samples = 0;
    std::uint64_t seed = 0;
    bool compared = false;
    std::vector<ServiceForecast> services;  ///< in book order; those of the earlier book only, last
    ServiceForecast any;                    ///< babies with any suggested service
    std::vector<std::string> uncounted;     ///< labels of findings that a simulation never shows
};

/// The mean of a paired difference with its 95 % interval: gained and lost among `samples` babies
/// that both books judged.
struct Difference {
    double value = 0, low = 0, high = 0;
};
Difference paired_difference(std::uint64_t gained, std::uint64_t lost, std::uint64_t samples);

/// Judges simulated newborns by a book and, when given, by an earlier one: the same babies, whose
/// findings are as frequent as `ontology/prevalences` says. They are examined in full and have no
/// history, so a forecast counts what examination alone suggests.
Forecast forecast(CompiledRulebook const& book, CompiledRulebook const* earlier,
                  NewbornModel const& model, std::uint64_t samples, std::uint64_t seed);

}  // namespace asterism::audit
