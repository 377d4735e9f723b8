// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "conditions/read.h"
#include "yaml/table.h"

namespace asterism {

/// The finding that `present` and `absent` speak of, with its side and grades.
struct FindingTest {
    FindingId finding = 0;
    std::optional<SideWanted> side;
    std::vector<std::uint32_t> grades;

    Literal compile(Builder& builder) const;
    std::string describe(Vocabulary const& vocabulary) const;
};

struct FindingTestSyntax {
    Word finding;
    std::optional<SideWanted> side;
    std::vector<Word> grades;
};

yaml::Table<FindingTestSyntax> finding_test_table(std::string keyword);
std::optional<FindingTest> read_finding_test(yaml::Node const& node, ReadContext const& context,
                                             std::string keyword);

}  // namespace asterism
