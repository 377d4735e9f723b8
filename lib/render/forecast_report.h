// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include <nlohmann/json_fwd.hpp>

#include "audit/forecast.h"

namespace asterism {

inline constexpr auto forecast_schema = "asterism.forecast/1";

/// A forecast, the number of births it is told for, and the books in words.
struct ForecastReport {
    audit::Forecast const& forecast;
    std::uint64_t births = 1000;
    CompiledRulebook const& book;
    CompiledRulebook const* earlier = nullptr;
};

std::string forecast_text(ForecastReport const& report, bool colour);
nlohmann::ordered_json forecast_json(ForecastReport const& report);
/// One row a service.
std::string forecast_csv(ForecastReport const& report);

}  // namespace asterism
