// SPDX-License-Identifier: MIT
#include "norms/norm.h"

#include <algorithm>

namespace asterism::norms {
namespace {

/// The header that the key column of a table has.
std::string_view key_column(Clock clock) {
    switch (clock) {
        case Clock::gestation_week: return "ga_completed_weeks";
        case Clock::age_day: return "age_days";
        case Clock::post_menstrual_day: return "pma_days";
        default: return "ga_days";
    }
}

using ReadScale = tl::expected<Scale, TableErrors>;

ReadScale read_scale(NormDescription const& description, std::string_view text) {
    if (description.kind == Kind::skew_t) {
        return read_skew_t_table(text).map(
            [](SkewTTable table) -> Scale { return SkewTScale{std::move(table)}; });
    }
    if (description.kind == Kind::very_preterm) {
        return read_very_preterm_table(text).map([](std::vector<VeryPreterm> rows) -> Scale {
            return VeryPretermScale{std::move(rows)};
        });
    }
    return read_lms_table(text, key_column(description.clock)).map([&](LmsTable table) -> Scale {
        return LmsScale{std::move(table), description.who_tail};
    });
}

NormErrors in_table(NormDescription const& description, TableErrors const& found) {
    NormErrors errors;
    for (auto const& error : found) {
        errors.push_back({description.norm, description.table, error.line, error.message});
    }
    return errors;
}

NormErrors missing_measures(NormDescription const& description, Scale const& scale) {
    NormErrors errors;
    for (auto const& measure : description.measures) {
        if (unit_of(scale, measure) != nullptr) continue;
        errors.push_back({description.norm, description.table, 1,
                          "the table has no rows for `" + measure + "`"});
    }
    return errors;
}

Scale mean_sd_scale(NormDescription const& description) {
    return MeanSdScale{{*description.mean, description.mean_per_week, *description.sd}};
}

tl::expected<Norm, NormErrors> with_table(NormDescription description, TableTexts const& tables) {
    auto const text = tables.find(description.table);
    if (text == tables.end()) {
        if (!description.bundled) return Norm{std::move(description), std::nullopt};
        return tl::make_unexpected(NormErrors{
            {description.norm, "", 0, "the table `" + description.table + "` is not there"}});
    }
    auto scale = read_scale(description, text->second);
    if (!scale) return tl::make_unexpected(in_table(description, scale.error()));
    if (auto errors = missing_measures(description, *scale); !errors.empty()) {
        return tl::make_unexpected(std::move(errors));
    }
    return Norm{std::move(description), *std::move(scale)};
}

}  // namespace

bool Norm::covers(std::string_view measure) const {
    return std::ranges::find(description.measures, measure) != description.measures.end();
}

bool Norm::lacks_table() const { return has_table(description.kind) && !scale; }

Clock Norm::clock() const {
    auto const kind = description.kind;
    return kind == Kind::skew_t || kind == Kind::very_preterm ? Clock::gestation_day
                                                              : description.clock;
}

std::string const& Norm::unit(std::string_view measure) const {
    auto const* of_table = scale ? unit_of(*scale, measure) : nullptr;
    return of_table != nullptr ? *of_table : description.unit;
}

bool has_table(Kind kind) {
    return kind == Kind::lms || kind == Kind::skew_t || kind == Kind::very_preterm;
}

tl::expected<Norm, NormErrors> make_norm(NormDescription description, TableTexts const& tables) {
    if (auto errors = check_description(description); !errors.empty())
        return tl::make_unexpected(std::move(errors));
    if (has_table(description.kind)) return with_table(std::move(description), tables);
    if (description.kind != Kind::mean_sd) return Norm{std::move(description), std::nullopt};
    auto scale = mean_sd_scale(description);
    return Norm{std::move(description), std::move(scale)};
}

}  // namespace asterism::norms
