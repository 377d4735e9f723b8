// SPDX-License-Identifier: MIT
// Never run as a suite: exit_codes.py runs each case alone.
#include "testing.h"

TEST_CASE("passes") { CHECK(1 + 1 == 2); }

TEST_CASE("fails") { CHECK(1 + 1 == 3); }

TEST_CASE("asserts nothing") {}

TEST_CASE("skips") { asterism::testing::skip("no reason at all"); }

TEST_CASE("skips and fails") {
    asterism::testing::skip("no reason at all");
    CHECK(1 + 1 == 3);
}

TEST_CASE("needs data") {
    if (auto const file = asterism::testing::data_file("present.txt")) {
        CHECK(file->filename() == "present.txt");
    }
}

TEST_CASE("needs absent facts") {
    if (asterism::testing::facts_file("absent.txt")) FAIL("found a file that is not there");
}
