// SPDX-License-Identifier: MIT
#pragma once

#include <functional>
#include <limits>
#include <string>
#include <string_view>

#include "base/diagnostic.h"
#include "base/time.h"
#include "base/truth.h"
#include "yaml/node.h"
#include "yaml/shape.h"

namespace asterism {

/// An interval of numbers, open or closed at either end.
struct Range {
    double low = -std::numeric_limits<double>::infinity();
    double high = std::numeric_limits<double>::infinity();
    bool low_open = true;
    bool high_open = true;

    /// Whether a value known only as a band lies inside: yes when all of it does, no when none of
    /// it does.
    Truth contains(double from, double to) const;
    friend auto operator<=>(Range const&, Range const&) = default;
};

/// How a bound is written, and how it is printed again.
struct BoundSyntax {
    std::function<Parsed<double>(std::string_view)> parse;
    std::function<std::string(double)> print;
};

BoundSyntax number_bounds();
BoundSyntax duration_bounds();   ///< hours
BoundSyntax gestation_bounds();  ///< days

/// Reads `{ above: .., below: .., at-least: .., at-most: .., between: [a, b] }`; at least one
/// bound, not crossed.
bool read_range(yaml::Node const& node, BoundSyntax const& syntax, Range& range,
                Diagnostics& diagnostics);

/// What `read_range` reads may look like.
yaml::Shape range_shape();

/// "below 24h", "above 2.5", "from 3 to 5".
std::string describe(Range const& range, BoundSyntax const& syntax);

}  // namespace asterism
