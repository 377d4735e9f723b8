// SPDX-License-Identifier: MIT
#include "norms/units.h"

#include "testing.h"

using asterism::norms::convert;

TEST_CASE("lengths and masses convert by their exact definitions") {
    CHECK(convert(29.5, "cm", "mm") == 295);
    CHECK(convert(295, "mm", "cm") == 29.5);
    CHECK(convert(1, "in", "mm") == 25.4);
    CHECK(convert(0.3, "m", "cm") == 30);
    CHECK(convert(2610, "g", "kg") == 2.61);
    CHECK(convert(1, "lb", "g") == 453.59237);
    CHECK(convert(16, "oz", "lb") == 1);
}

TEST_CASE("a value on a cut-off stays on it in another unit") {
    // 1.1 * 10 is 11.000000000000002 in binary, and would be above a cut-off of 11 mm.
    CHECK(convert(1.1, "cm", "mm") == 11);
    CHECK(convert(2.5, "cm", "mm") == 25);
    CHECK(convert(0.65, "cm", "mm") == 6.5);
}

TEST_CASE("every tenth of a centimetre up to 60 cm converts to a whole millimetre") {
    for (int mm = 1; mm <= 600; ++mm) {
        CAPTURE(mm);
        CHECK(convert(mm / 10.0, "cm", "mm") == mm);
    }
}

TEST_CASE("a unit converts to itself, whatever it is") {
    CHECK(convert(96, "%", "%") == 96);
    CHECK(convert(148, "/min", "/min") == 148);
    CHECK(convert(0.4, "ratio", "ratio") == 0.4);
}

TEST_CASE("units of different things do not convert") {
    CHECK(convert(1, "cm", "g") == std::nullopt);
    CHECK(convert(1, "%", "cm") == std::nullopt);
    CHECK(convert(1, "mm", "mmHg") == std::nullopt);
    CHECK(convert(1, "furlong", "mm") == std::nullopt);
}
