// SPDX-License-Identifier: MIT
/// Numbers as written: decimal only, finite only, with their printed precision.
#include "base/number.h"

#include <string>

#include "testing.h"

using namespace asterism;

TEST_CASE("plain decimals are read with their printed precision") {
    struct Row {
        char const* text;
        double value;
        int decimals;
    };
    for (Row const& row : {
             Row{"0", 0, 0},
             Row{"3", 3, 0},
             Row{"-12", -12, 0},
             Row{"0.5", 0.5, 1},
             Row{"-0.25", -0.25, 2},
             Row{"31.0", 31, 1},
             Row{"31.00", 31, 2},
             Row{"040", 40, 0},
             Row{"007.50", 7.5, 2},
             Row{"123456789012345", 123456789012345.0, 0},
             Row{"0.00000000000001", 1e-14, 14},
         }) {
        CAPTURE(std::string(row.text));
        auto const number = parse_decimal(row.text);
        REQUIRE(number);
        CHECK(number->value == row.value);
        CHECK(number->decimals == row.decimals);
    }
}

TEST_CASE("everything else is no number") {
    for (auto const* text : {"",
                             "-",
                             ".",
                             "-.",
                             ".5",
                             "-.5",
                             "5.",
                             "+3",
                             "--3",
                             "3-",
                             "1e5",
                             "1E5",
                             "0x10",
                             "0o17",
                             "0b1",
                             "nan",
                             ".nan",
                             "NaN",
                             "inf",
                             ".inf",
                             "-inf",
                             "1_000",
                             "1,5",
                             "1 5",
                             " 1",
                             "1 ",
                             "1.2.3",
                             "1..2",
                             "1234567890123456",
                             "1.234567890123456",
                             "3a",
                             "\u0663"}) {
        CAPTURE(std::string(text));
        CHECK_FALSE(parse_decimal(text));
    }
}

TEST_CASE("whole numbers") {
    CHECK(parse_integer("040") == 40);
    CHECK(parse_integer("0") == 0);
    CHECK(parse_integer("-7") == -7);
    CHECK(parse_integer("1000000000") == 1000000000);
    for (auto const* text : {"", "1.0", "0.5", "1e3", "0x10", "+1", "1000000001", "-1000000001",
                             "99999999999999", "nan", "seven"}) {
        CAPTURE(std::string(text));
        CHECK_FALSE(parse_integer(text));
    }
}

TEST_CASE("numbers print as the shortest text that reads back") {
    CHECK(to_text(3.0) == "3");
    CHECK(to_text(0.5) == "0.5");
    CHECK(to_text(0.1 + 0.2) == "0.30000000000000004");
    CHECK(to_text(-0.0) == "0");
    CHECK(to_text(-2.25) == "-2.25");
    CHECK(to_text(100.0) == "100");
    for (double const value : {0.1, 1.0 / 3, 31.7, 2610.0, -4.05}) {
        CHECK(std::stod(to_text(value)) == value);
    }
}

TEST_CASE("trimming takes blanks at both ends only") {
    CHECK(trim("") == "");
    CHECK(trim(" \t\r\n") == "");
    CHECK(trim("a") == "a");
    CHECK(trim("  a b\t\n") == "a b");
    CHECK(trim("\u00a0a") == "\u00a0a");
}
