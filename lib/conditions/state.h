// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "conditions/builder.h"
#include "conditions/range.h"

namespace asterism {

struct Vocabulary;

/// The finding that `present` and `absent` speak of, with its side and grades.
struct FindingTest {
    FindingId finding = 0;
    std::optional<SideWanted> side;
    std::vector<std::uint32_t> grades;

    Literal compile(Builder& builder) const;
    std::string describe(Vocabulary const& vocabulary) const;
};

/// The bound that a tally is held to.
struct TallyTest {
    TallyId tally = 0;
    Tenths threshold = 0;
    bool at_most = false;
};

/// What a condition holds besides its place and its children, as plain data: with its kind enough
/// to make it again. Groups hold nothing more; `int` is how many of the children are wanted.
using ConditionState = std::variant<std::monostate, FindingTest, int, TallyTest, ConstellationId,
                                    MeasureTest, Range, Sex>;

}  // namespace asterism
