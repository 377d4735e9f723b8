// SPDX-License-Identifier: MIT
/// Numbers with units as written in notes, conversion between units, and the digest of files.
#include "base/quantity.h"

#include <set>
#include <string>
#include <vector>

#include "base/digest.h"
#include "testing.h"

using namespace asterism;

namespace {

std::string digest_of(std::vector<std::string> const& texts) {
    std::vector<SourcePtr> sources;
    for (auto const& text : texts)
        sources.push_back(make_source("name " + std::to_string(sources.size()), text));
    return digest(sources);
}

}  // namespace

TEST_CASE("a quantity keeps number, unit and the size of its last digit") {
    struct Row {
        char const* text;
        double value;
        double step;
        char const* unit;
    };
    for (Row const& row : {
             Row{"31.0 cm", 31, 0.1, "cm"},
             Row{"31 cm", 31, 1, "cm"},
             Row{"31.00cm", 31, 0.01, "cm"},
             Row{"2610 g", 2610, 1, "g"},
             Row{"2.61 kg", 2.61, 0.01, "kg"},
             Row{"96 %", 96, 1, "%"},
             Row{"96%", 96, 1, "%"},
             Row{"96 percent", 96, 1, "%"},
             Row{"148/min", 148, 1, "/min"},
             Row{"148 /min", 148, 1, "/min"},
             Row{"148 bpm", 148, 1, "/min"},
             Row{"148 per minute", 148, 1, "/min"},
             Row{"12.5 inches", 12.5, 0.1, "in"},
             Row{"40", 40, 1, ""},
             Row{"040 mm", 40, 1, "mm"},
             Row{"-3 mm", -3, 1, "mm"},
             Row{"  7   mmHg  ", 7, 1, "mmHg"},
             Row{"5 \u00b0", 5, 1, "degrees"},
             Row{"5 stone", 5, 1, "stone"},  // unknown units are for the measure to refuse
         }) {
        CAPTURE(std::string(row.text));
        auto const quantity = parse_quantity(row.text);
        REQUIRE(quantity);
        CHECK(quantity->value == doctest::Approx(row.value).epsilon(1e-12));
        CHECK(quantity->step == doctest::Approx(row.step).epsilon(1e-12));
        CHECK(quantity->unit == row.unit);
    }
}

TEST_CASE("pounds and ounces become pounds, exactly") {
    for (auto const* text : {"6 lb 4 oz", "6lb4oz", "6 lbs 4 ounces", "6 pounds 4 oz"}) {
        CAPTURE(std::string(text));
        auto const quantity = parse_quantity(text);
        REQUIRE(quantity);
        CHECK(quantity->unit == "lb");
        CHECK(quantity->value == doctest::Approx(6.25).epsilon(1e-14));
        CHECK(quantity->step == doctest::Approx(1.0 / 16).epsilon(1e-14));
        // International pound: 453.59237 g.
        CHECK(quantity->value * *conversion("lb", "g") ==
              doctest::Approx(2834.9523125).epsilon(1e-14));
    }
}

TEST_CASE("tenths of an ounce narrow the step") {
    auto const quantity = parse_quantity("6 lb 4.5 oz");
    REQUIRE(quantity);
    CHECK(quantity->value == doctest::Approx(6.28125).epsilon(1e-14));
    CHECK(quantity->step == doctest::Approx(0.1 / 16).epsilon(1e-14));
}

TEST_CASE("what is no quantity is refused with an example") {
    for (auto const* text : {"",
                             " ",
                             "cm",
                             "large",
                             "31,0 cm",
                             "1e5 g",
                             "0x10 g",
                             "+3 cm",
                             ".5 cm",
                             "5. cm",
                             "3.1.0 cm",
                             "6 lb 4",
                             "6 lb 4 cm",
                             "6 kg 4 g",
                             "6 lb oz 4",
                             "6 lb -4 oz",
                             "6 lb 4 oz 2 oz",
                             "31-32 cm",
                             "- 3 cm",
                             "nan cm",
                             "1234567890123456 g"}) {
        CAPTURE(std::string(text));
        auto const quantity = parse_quantity(text);
        REQUIRE_FALSE(quantity);
        CHECK(quantity.error().find("`31.0 cm`") != std::string::npos);
    }
}

TEST_CASE("units of one kind convert") {
    struct Row {
        char const* from;
        char const* to;
        double factor;
    };
    for (Row const& row :
         {Row{"cm", "mm", 10}, Row{"mm", "cm", 0.1}, Row{"in", "mm", 25.4}, Row{"in", "cm", 2.54},
          Row{"kg", "g", 1000}, Row{"g", "kg", 0.001}, Row{"lb", "g", 453.59237},
          Row{"oz", "g", 28.349523125}, Row{"lb", "oz", 16}, Row{"m", "cm", 100},
          Row{"/min", "/min", 1}, Row{"%", "%", 1}}) {
        CAPTURE(std::string(row.from));
        CAPTURE(std::string(row.to));
        auto const factor = conversion(row.from, row.to);
        REQUIRE(factor);
        CHECK(*factor == doctest::Approx(row.factor).epsilon(1e-14));
    }
}

TEST_CASE("conversion there and back is one") {
    for (auto const* a : {"mm", "cm", "in", "m"}) {
        for (auto const* b : {"mm", "cm", "in", "m"}) {
            auto const there_and_back = *conversion(a, b) * *conversion(b, a);
            CHECK(there_and_back == doctest::Approx(1).epsilon(1e-14));
        }
    }
}

TEST_CASE("units of different kinds do not convert") {
    CHECK_FALSE(conversion("cm", "g"));
    CHECK_FALSE(conversion("%", "/min"));
    CHECK_FALSE(conversion("cm", "%"));
    CHECK_FALSE(conversion("stone", "kg"));
    CHECK_FALSE(conversion("", "cm"));
}

TEST_CASE("usual spellings of units have one form") {
    struct Row {
        char const* written;
        char const* unit;
    };
    for (Row const& row :
         {Row{"bpm", "/min"}, Row{"per minute", "/min"}, Row{"grams", "g"}, Row{"lbs", "lb"},
          Row{"ounces", "oz"}, Row{"inch", "in"}, Row{"\"", "in"}, Row{"percent", "%"},
          Row{"mm Hg", "mmHg"}, Row{"cm", "cm"}, Row{"mms", "mms"}, Row{"", ""}}) {
        CAPTURE(std::string(row.written));
        CHECK(canonical_unit(row.written) == row.unit);
        CHECK(canonical_unit(canonical_unit(row.written)) == row.unit);
    }
}

TEST_CASE("the digest is SHA-256 over each text with its length before it") {
    // Worked out with another program: printf '3:abc' | sha256sum, and so on.
    CHECK(digest({}) == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    CHECK(digest_of({"abc"}) == "aab5f9ae99b2e38fb462025c8f72f570c9c811705d2a4277dc855d7fa293fe97");
    CHECK(digest_of({""}) == "ba768b331fd86cec803be04e56ab2b3d4c0e98ef4ee4fcd4e72ad7cce61a1d1f");
}

TEST_CASE("a digest has 64 small hexadecimal digits") {
    for (auto const& text : {std::string(), std::string("x"), std::string(100000, 'y')}) {
        auto const value = digest_of({text});
        CHECK(value.size() == 64);
        CHECK(value.find_first_not_of("0123456789abcdef") == std::string::npos);
    }
}

TEST_CASE("equal texts have equal digests, whatever their names") {
    CHECK(digest({make_source("a", "same")}) == digest({make_source("b/c", "same")}));
}

TEST_CASE("order, division and every byte count") {
    std::set<std::string> const different{
        digest_of({"a", "b"}), digest_of({"b", "a"}), digest_of({"ab"}),
        digest_of({"ab", ""}), digest_of({"", "ab"}), digest_of({"a", "b "}),
        digest_of({"a\n"}),    digest_of({"a\r\n"}),  digest_of({"1:a"})};
    CHECK(different.size() == 9);
}
