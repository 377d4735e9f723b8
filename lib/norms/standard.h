// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <tl/expected.hpp>

#include "base/lazy_list.h"
#include "norms/norm.h"
#include "norms/query.h"

namespace asterism::norms {

/// All norms of an ontology, read and checked. Immutable; may be shared between threads.
///
/// Which norm is preferred. Norms are asked in the order of their descriptions; the preferred one
/// is the first that gives a reading through a window that is not marked `beside`. The shipped
/// descriptions make of this:
/// - size at birth, up to 72 hours of age (or age not given): the INTERGROWTH-21st newborn size
/// standards, skew-t at
///   33w0d to 42w6d, the very preterm equations at 24w0d to 32w6d; Olsen 2010 and Fenton 2013 stand
///   beside them;
/// - later, babies born at 37w0d or more: the WHO standards by age in days; babies born earlier:
/// Fenton 2013 by
///   post-menstrual day if the user has supplied it, else none. A baby born preterm never meets WHO
///   day 0;
/// - outside every table no norm is preferred: nothing is clamped, extrapolated or taken from the
/// next table. Other measures have one preferred population, listed first, with the reason in its
/// note.
class Standards {
public:
    /// Builds from descriptions and the texts of their tables. All errors of all norms are returned
    /// together.
    [[nodiscard]] static tl::expected<Standards, NormErrors> build(
        std::vector<NormDescription> descriptions, TableTexts const& tables);

    /// What a norm is called and measures: all that is asked of most norms.
    struct Entry {
        std::string norm{};
        std::vector<std::string> measures{};
    };

    /// From norms that were built and checked before, with the entry of each, which says the same
    /// as its description.
    [[nodiscard]] static Standards of(LazyList<Norm> norms, std::vector<Entry> entries) {
        return {std::move(norms), std::move(entries)};
    }

    /// What each norm for the measure says, in the order of the descriptions: a reading or why
    /// there is none. Empty when no norm has the measure.
    [[nodiscard]] std::vector<Answer> readings(Query const& query) const;

    /// The preferred reading, or nothing.
    [[nodiscard]] std::optional<Reading> preferred(Query const& query) const;

    [[nodiscard]] LazyList<Norm> const& norms() const { return norms_; }
    [[nodiscard]] std::vector<Entry> const& entries() const { return entries_; }
    /// The norm with this id; null when there is none.
    [[nodiscard]] Norm const* find(std::string_view norm) const;

private:
    Standards(LazyList<Norm> norms, std::vector<Entry> entries)
        : norms_(std::move(norms)), entries_(std::move(entries)) {}

    LazyList<Norm> norms_;
    std::vector<Entry> entries_;  ///< parallel to the norms
};

/// One point of a growth curve.
struct CurvePoint {
    int key = 0;
    double value = 0;
};

/// The line of one z-score over all keys of a norm, in the unit of the norm: what a growth chart
/// draws. Empty for a norm without a clock, without this measure, or without its table. `sex` is
/// female or male.
[[nodiscard]] std::vector<CurvePoint> curve(Norm const& norm, std::string_view measure, Sex sex,
                                            double z);

}  // namespace asterism::norms
