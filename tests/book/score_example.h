// SPDX-License-Identifier: MIT
/// One baby with a published or countable score, checked on the shipped constellations.
#pragma once

namespace asterism::testing {

/// `findings` are ids, as in a case file, without the brackets; `also` is the rest of the case
/// (`age: 8d`) or empty. Everything not listed is normal. `tally` is the constellation,
/// or one of its groups (`charge-blake/major`).
struct ScoreExample {
    char const* constellation;
    char const* tally;
    char const* findings;
    char const* also;
    double points;
    bool reached;
};

/// Judges the baby and checks points and verdict of the constellation.
void check(ScoreExample const& example);

/// The most points that all items of a constellation have together.
double possible_points(char const* constellation);

}  // namespace asterism::testing
