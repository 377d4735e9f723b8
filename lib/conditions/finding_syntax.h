// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "conditions/read.h"
#include "yaml/table.h"

namespace asterism {

struct FindingTestSyntax {
    Word finding;
    std::optional<SideWanted> side;
    std::vector<Word> grades;
};

yaml::Table<FindingTestSyntax> finding_test_table(std::string keyword);
std::optional<FindingTest> read_finding_test(yaml::Node const& node, ReadContext const& context,
                                             std::string keyword);

}  // namespace asterism
