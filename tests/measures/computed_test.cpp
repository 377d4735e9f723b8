// SPDX-License-Identifier: MIT
#include "measures/measuring.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

TEST_CASE("percent and ratio are taken from the readings, across units, with both margins") {
    auto const small = measuring("");
    std::string const text = "measures: { width: 20 mm, girth: 4.0 cm }\n";
    auto const share = small.reading(text, "share");
    CHECK(share.computed);
    CHECK(share.as_read.low == doctest::Approx(50));
    CHECK(share.value.low == doctest::Approx(100 * 19.5 / 40.5));
    CHECK(share.value.high == doctest::Approx(100 * 20.5 / 39.5));
    CHECK(small.reading(text, "quotient").as_read.low == doctest::Approx(0.5));
}

TEST_CASE("differences and means") {
    auto const small = measuring("");
    std::string const text =
        "measures: { rate: 94 /min, rate-two: 98 /min, width: 30 mm, girth: 5.0 cm }\n";
    CHECK(small.reading(text, "gap").value == norms::point(4));
    CHECK(small.reading(text, "excess").value == norms::point(-4));
    auto const middle = small.reading(text, "middle");
    CHECK(middle.as_read == norms::point(40));
    CHECK(middle.value.low == doctest::Approx((29.5 + 49.5) / 2));
}

TEST_CASE("a computed measure needs both parts, and a stated one stands as stated") {
    auto const small = measuring("");
    CHECK_FALSE(small.has("measures: { width: 20 mm }\n", "share"));
    auto const stated =
        small.reading("measures: { width: 20 mm, girth: 4.0 cm, share: 60 % }\n", "share");
    CHECK_FALSE(stated.computed);
    CHECK(stated.as_read == norms::point(60));
}

TEST_CASE("the norm of a computed measure sees the margins of its parts") {
    auto const small = measuring(
        "norms:\n  - { norm: q, measure: quotient, kind: mean-sd, unit: ratio, mean: 0.4, sd: 0.1, "
        "population: p, evidence: memory, sources: [s-2000], cut-offs: [ { above: 0.51, means: "
        "large } ] }\n");
    auto const reading = small.reading("measures: { width: 20 mm, girth: 4.0 cm }\n", "quotient");
    REQUIRE(reading.z);
    CHECK(reading.z_as_read->low == doctest::Approx(1));
    CHECK(reading.z->low == doctest::Approx((19.5 / 40.5 - 0.4) / 0.1));
    CHECK(reading.z->high == doctest::Approx((20.5 / 39.5 - 0.4) / 0.1));
    CHECK(reading.note.find("borderline") != std::string::npos);
}

TEST_CASE("the head against the body is a difference of two z-scores of one norm, day by day") {
    std::string const boy = "sex: male\ngestation: 40w0d\n";
    std::string const measures =
        "measures: { head-circumference: 36.3 cm, length: 49.9 cm, weight: 3380 g }\n";
    auto const head = shipped().reading(boy + measures, "head-circumference");
    auto const length = shipped().reading(boy + measures, "length");
    auto const against = shipped().reading(boy + measures, "head-against-length");
    CHECK(against.as_read.low == doctest::Approx(head.z_as_read->low - length.z_as_read->low));
    CHECK(against.value.low == doctest::Approx(head.z->low - length.z->high));
    CHECK(against.value.high == doctest::Approx(head.z->high - length.z->low));
    CHECK(against.note.find("head large for the length") != std::string::npos);
}

TEST_CASE("without a norm there is no difference of z-scores") {
    CHECK_FALSE(
        shipped().has("sex: male\nmeasures: { head-circumference: 36.3 cm, length: 49.9 cm }\n",
                      "head-against-length"));
}
