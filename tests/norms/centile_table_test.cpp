// SPDX-License-Identifier: MIT
#include "norms/centile_table.h"

#include "testing.h"

using namespace asterism::norms;

namespace {

/// Fleming 2011, heart rate from birth to 3 months.
std::vector<PrintedCentile> const heart_rate{{1, 107}, {10, 123}, {50, 143}, {90, 164}, {99, 181}};

}  // namespace

TEST_CASE("a value between printed centiles is between them, nothing is interpolated") {
    CHECK(bracket(110, heart_rate) == Band{1, 10});
    CHECK(bracket(122, heart_rate) == Band{1, 10});
    CHECK(bracket(150, heart_rate) == Band{50, 90});
}

TEST_CASE("a value on a printed centile is that centile") {
    for (auto const& row : heart_rate) CHECK(bracket(row.value, heart_rate) == point(row.centile));
}

TEST_CASE("beyond the outermost centile the bracket is open") {
    CHECK(bracket(90, heart_rate) == Band{0, 1});
    CHECK(bracket(200, heart_rate) == Band{99, 100});
}

TEST_CASE("a band of values has the bracket of both its ends") {
    CHECK(bracket(Band{120, 125}, heart_rate) == Band{1, 50});
    CHECK(bracket(Band{107, 107}, heart_rate) == Band{1, 1});
    CHECK(bracket(Band{90, 107}, heart_rate) == Band{0, 1});
}

TEST_CASE("the bracket never falls as the value rises") {
    auto before = bracket(60, heart_rate);
    for (int rate = 61; rate < 220; ++rate) {
        auto const now = bracket(rate, heart_rate);
        CHECK(now.low >= before.low);
        CHECK(now.high >= before.high);
        before = now;
    }
}
