// SPDX-License-Identifier: MIT
#include "norms/cut_off.h"

#include "testing.h"

using namespace asterism::norms;

TEST_CASE("each relation takes or leaves the limit itself as it is published") {
    CHECK(is_beyond(point(5), {Relation::above, 5, "atypical"}) == false);
    CHECK(is_beyond(point(8), {Relation::at_least, 8, "to be investigated"}) == true);
    CHECK(is_beyond(point(90), {Relation::below, 90, "fails at once"}) == false);
    CHECK(is_beyond(point(38), {Relation::at_most, 38, "short"}) == true);
}

TEST_CASE("on either side of the limit the answer changes") {
    CutOff const dimple{Relation::above, 5, "atypical"};
    CHECK(is_beyond(point(4.9), dimple) == false);
    CHECK(is_beyond(point(5.1), dimple) == true);
    CutOff const micropenis{Relation::below, 2.5, "short"};
    CHECK(is_beyond(point(2.4), micropenis) == true);
    CHECK(is_beyond(point(2.6), micropenis) == false);
}

TEST_CASE("a margin across the limit leaves it open") {
    CutOff const cornea{Relation::above, 11, "large"};
    CHECK(is_beyond(widen(point(11), 0.25), cornea) == std::nullopt);
    CHECK(is_beyond(widen(point(11.5), 0.25), cornea) == true);
    CHECK(is_beyond(widen(point(10.5), 0.25), cornea) == false);
}
