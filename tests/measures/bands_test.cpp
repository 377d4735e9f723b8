// SPDX-License-Identifier: MIT
#include <nlohmann/json.hpp>

#include "assess/assess.h"
#include "measures/measuring.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::string head(std::string const& value, std::string const& more) {
    return "measures: { head-circumference: " + value + " }\n" + more;
}

std::string const girl = "sex: female\ngestation: 37w3d\n";

Assessment judged(std::string const& case_text) {
    Diagnostics diagnostics;
    auto const baby =
        read_case(make_source("case.yaml", case_text), *shipped_book().ontology, diagnostics);
    REQUIRE_FALSE(diagnostics.has_errors());
    return assess(shipped_book(), baby);
}

std::string state_of(Assessment const& assessment, std::string const& finding) {
    for (auto const& evidence : assessment.findings) {
        if (evidence.id == finding) return evidence.state;
    }
    return "not listed";
}

bool cautions_of(Assessment const& assessment, std::string const& part) {
    for (auto const& caution : assessment.cautions) {
        if (caution.text.find(part) != std::string::npos) return true;
    }
    return false;
}

}  // namespace

TEST_CASE("margins: half the resolution for tape and ruler, none for scale and counter") {
    auto const small = measuring("");
    auto const readings =
        small.readings("measures: { width: 10 mm, girth: 30.0 cm, mass: 3000 g, rate: 60 /min }\n");
    REQUIRE(readings.size() >= 4);
    CHECK(readings[0].value.low == doctest::Approx(9.5));
    CHECK(readings[0].value.high == doctest::Approx(10.5));
    CHECK(readings[1].value.low == doctest::Approx(29.95));
    CHECK(readings[2].value == norms::point(3000));
    CHECK(readings[3].value == norms::point(60));
}

TEST_CASE("conversion leaves no noise: 1.1 cm is 11 mm and not a hair more") {
    auto const small = measuring("");
    CHECK(small.reading("measures: { width: 1.1 cm }\n", "width").as_read == norms::point(11));
    CHECK(small.reading("measures: { mass: 2.61 kg }\n", "mass").as_read == norms::point(2610));
}

TEST_CASE("the girl of 37w3d with a head of 29.5 cm is at -2.71") {
    auto const reading = shipped().reading(head("29.5 cm", girl), "head-circumference");
    CHECK(reading.norm == "intergrowth-newborn");
    REQUIRE(reading.z_as_read);
    CHECK(norms::is_point(*reading.z_as_read));
    CHECK(reading.z_as_read->low == doctest::Approx(-2.7144).epsilon(0.0001));
    REQUIRE(reading.z);
    CHECK(reading.z->low < reading.z_as_read->low);
    CHECK(reading.z->high > reading.z_as_read->high);
    CHECK(reading.centile_as_read->low == doctest::Approx(0.332).epsilon(0.01));
}

TEST_CASE("weeks without days are a band over all seven, never week + 0") {
    auto const band =
        shipped().reading(head("29.5 cm", "sex: female\ngestation: 37w\n"), "head-circumference");
    auto const first =
        shipped().reading(head("29.5 cm", "sex: female\ngestation: 37w0d\n"), "head-circumference");
    auto const last =
        shipped().reading(head("29.5 cm", "sex: female\ngestation: 37w6d\n"), "head-circumference");
    CHECK(band.z_as_read->high == first.z_as_read->high);
    CHECK(band.z_as_read->low == last.z_as_read->low);
    CHECK(band.note.find("days of gestation are not given") != std::string::npos);
}

TEST_CASE("sex undetermined: both sexes, used only where they agree") {
    std::string const unknown = "sex: undetermined\ngestation: 40w0d\n";
    auto const reading = shipped().reading(head("31.8 cm", unknown), "head-circumference");
    CHECK(reading.z_as_read->low < -2);
    CHECK(reading.z_as_read->high > -2);
    CHECK(state_of(judged(head("31.8 cm", unknown)), "microcephaly") == "not listed");
    CHECK(state_of(judged(head("31.0 cm", unknown)), "microcephaly") == "present");
}

TEST_CASE("outside every table there is no norm, nothing is clamped, and the reason is said") {
    auto const early =
        shipped().reading(head("20.0 cm", "sex: female\ngestation: 23w0d\n"), "head-circumference");
    CHECK(early.norm.empty());
    CHECK_FALSE(early.z);
    CHECK(early.note.find("no norm") != std::string::npos);
    auto const grown = shipped().reading(
        head("30.0 cm", "sex: female\ngestation: 30w0d\nage: 14d\n"), "head-circumference");
    CHECK(grown.norm.empty());
    auto const judged_by_eye = judged(head("20.0 cm", "sex: female\ngestation: 23w0d\n"));
    CHECK(state_of(judged_by_eye, "microcephaly") == "not listed");
}

TEST_CASE("after 72 hours term babies are read by age, at birth by gestation") {
    auto const at_birth = shipped().reading(head("34 cm", girl), "head-circumference");
    auto const later = shipped().reading(head("34 cm", girl + "age: 14d\n"), "head-circumference");
    CHECK(at_birth.norm == "intergrowth-newborn");
    CHECK(later.norm == "who-2006");
}

TEST_CASE("across a cut-off a finding stays open; at a red flag the unsafe side is taken") {
    std::string const boy = "sex: male\ngestation: 40w0d\n";
    auto const open = judged(head("32.0 cm", boy));  // -2 SD is 32.00 cm
    CHECK(state_of(open, "microcephaly") == "not listed");
    CHECK(cautions_of(open, "microcephaly is borderline"));
    auto const unsafe = judged(head("30.7 cm", boy));  // -3 SD is 30.68 cm
    CHECK(state_of(unsafe, "severe-microcephaly") == "present");
    CHECK(cautions_of(unsafe, "the unsafe side is taken"));
    auto const clear = judged(head("30.8 cm", boy));
    CHECK(state_of(clear, "severe-microcephaly") == "not listed");
}

TEST_CASE("one of two measures does not clear a finding that both must clear") {
    auto const half = judged("measures: { sacral-dimple-width: 3 mm }\n");
    bool open = false;
    for (auto const& referral : half.referrals)
        open =
            open || (referral.service == "neurosurgery" && referral.verdict == Verdict::unsettled);
    CHECK(open);
}

TEST_CASE("a derived finding shows the number that decided it") {
    auto const assessment = judged(head("29.5 cm", girl));
    bool shown = false;
    for (auto const& referral : assessment.referrals) {
        for (auto const& reason : referral.reasons) {
            for (auto const& evidence : reason.evidence)
                shown = shown ||
                        (evidence.kind == Evidence::Kind::measure &&
                         evidence.value.find("-2.71 by intergrowth-newborn") != std::string::npos);
        }
    }
    CHECK(shown);
}

TEST_CASE(
    "small and large for gestation: the 10th and 90th centile of a birth standard, at birth only") {
    std::string const girl_39w2d =
        "sex: female\ngestation: 39w2d\n";  // 10th 2.691 kg, 90th 3.705 kg
    auto const with = [&](std::string const& weight, std::string const& more) {
        return judged("measures: { weight: " + weight + " }\n" + more);
    };
    CHECK(state_of(with("2690 g", girl_39w2d), "small-for-gestational-age") == "present");
    CHECK(state_of(with("2695 g", girl_39w2d), "small-for-gestational-age") == "not listed");
    CHECK(state_of(with("3710 g", girl_39w2d), "large-for-gestational-age") == "present");
    CHECK(state_of(with("3700 g", girl_39w2d), "large-for-gestational-age") == "not listed");
    CHECK(state_of(with("2000 g", girl_39w2d + "age: 14d\n"), "small-for-gestational-age") ==
          "not listed");
    std::string const girl_28w0d =
        "sex: female\ngestation: 28w0d\n";  // 10th 0.791 kg, 90th 1.298 kg
    CHECK(state_of(with("785 g", girl_28w0d), "small-for-gestational-age") == "present");
    CHECK(state_of(with("795 g", girl_28w0d), "small-for-gestational-age") == "not listed");
    CHECK(state_of(with("1305 g", girl_28w0d), "large-for-gestational-age") == "present");
    CHECK(state_of(with("1290 g", girl_28w0d), "large-for-gestational-age") == "not listed");
}

TEST_CASE("a head beyond 2 SD is not also called out of step with the body") {
    std::string const boy = "sex: male\ngestation: 40w0d\n";
    auto const large = judged(
        boy + "measures: { head-circumference: 37.5 cm, length: 49.9 cm, weight: 3380 g }\n");
    CHECK(state_of(large, "macrocephaly") == "present");
    CHECK(state_of(large, "relative-macrocephaly") == "not listed");
    auto const small = judged(
        boy + "measures: { head-circumference: 31.5 cm, length: 51.5 cm, weight: 3750 g }\n");
    CHECK(state_of(small, "microcephaly") == "present");
    CHECK(state_of(small, "relative-microcephaly") == "not listed");
}
