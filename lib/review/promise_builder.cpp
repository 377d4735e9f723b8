// SPDX-License-Identifier: MIT
#include "review/promise_builder.h"

namespace asterism {

Literal PromiseBuilder::tally_at_least(TallyId tally, Tenths threshold) {
    return gate(threshold, book_.tallies[tally].inputs);
}

Literal PromiseBuilder::reached(ConstellationId constellation) {
    return book_.constellations[constellation].reached.literal;
}

Literal PromiseBuilder::measured(MeasureTest const& test) {
    return fact(Fact::Kind::measure, test.measure, test_index(test));
}

}  // namespace asterism
