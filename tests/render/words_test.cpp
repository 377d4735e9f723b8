// SPDX-License-Identifier: MIT
/// The words that all writers for people share.
#include "render/assessment_words.h"

#include "testing.h"

using namespace asterism;

namespace {

Evidence finding(std::string label) {
    Evidence e;
    e.id = "some-id";
    e.label = std::move(label);
    e.state = "present";
    e.how = "stated";
    return e;
}

Evidence tally(std::string id, std::string value) {
    Evidence e;
    e.kind = Evidence::Kind::tally;
    e.id = std::move(id);
    e.label = "minor variants";
    e.value = std::move(value);
    e.threshold = "at least 3";
    return e;
}

}  // namespace

TEST_CASE("a finding with everything that was said of it") {
    auto e = finding("white pupil");
    CHECK(evidence_words(e) == "white pupil");
    e.side = "right";
    CHECK(evidence_words(e) == "white pupil, right");
    e.side = "both";
    e.grade = "marked";
    e.familial = true;
    CHECK(evidence_words(e) == "white pupil, both sides, marked, familial");
}

TEST_CASE("absence and derivation are said") {
    auto absent = finding("white pupil");
    absent.state = "absent";
    CHECK(evidence_words(absent) == "white pupil, absent");
    auto derived = finding("microcephaly");
    derived.how = "derived";
    CHECK(evidence_words(derived) == "microcephaly (derived)");
}

TEST_CASE("the user's own words stand beside the label only where they differ") {
    auto e = finding("white pupil");
    e.as_written = "White-Pupil";
    CHECK(evidence_as_written(e) == "white pupil");
    e.as_written = "leukocoria";
    CHECK(evidence_as_written(e) == "white pupil (written `leukocoria`)");
}

TEST_CASE(
    "a list names findings first and tallies after, and counts what it "
    "leaves out") {
    std::vector<Evidence> const list{tally("minor-variants", "3"), finding("a"), finding("b"),
                                     finding("c")};
    CHECK(evidence_list(list) == "a; b; c; minor variants: 3 (at least 3 decides)");
    CHECK(evidence_list(list, 2) == "a; b (+1); minor variants: 3 (at least 3 decides)");
    CHECK(evidence_list({}) == "");
    CHECK(evidence_list({tally("vacterl/major", "1"), finding("a")}) == "a");
}

TEST_CASE("numbers: one, many, and the first of them") {
    CHECK(counted(1, "step", "steps") == "1 step");
    CHECK(counted(0, "step", "steps") == "0 steps");
    CHECK(counted(12, "step", "steps") == "12 steps");
    CHECK(first_of({"a", "b", "c"}, 5) == "a; b; c");
    CHECK(first_of({"a", "b", "c"}, 1) == "a (+2)");
    CHECK(first_of({}, 1) == "");
}

TEST_CASE("a measure with its z, its band and its norm") {
    MeasureResult m;
    m.label = "head circumference";
    m.as_written = "29.5 cm";
    CHECK(measure_words(m) == "head circumference 29.5 cm");
    m.z_low = m.z_high = -2.71;
    m.centile_low = m.centile_high = 0.3;
    m.norm = "intergrowth-newborn";
    CHECK(measure_words(m) ==
          "head circumference 29.5 cm: z -2.71, centile 0.3, intergrowth-newborn");
    m.z_high = -2.5;
    CHECK(z_words(m) == "-2.71 to -2.50");
    m.z_high = -2.71;
    m.z_with_margin_low = -2.8;
    m.z_with_margin_high = -2.6;
    CHECK(z_words(m) == "-2.71 (with margin -2.80 to -2.60)");
    m.note = "outside the table";
    CHECK(measure_words(m).ends_with("(outside the table)"));
}

TEST_CASE("a due window as dates where the birth date is known, else as ages") {
    FollowUpResult f;
    f.from = Duration{28 * 24};
    f.to = Duration{42 * 24};
    CHECK(due_words(f) == "4w to 6w of age");
    f.from = Duration{0};
    CHECK(due_words(f) == "by 6w of age");
    using namespace std::chrono;
    f.from = Duration{28 * 24};
    f.from_date = 2031y / April / 30;
    f.to_date = 2031y / May / 14;
    CHECK(due_words(f) == "2031-04-30 to 2031-05-14");
}

TEST_CASE("urgencies, classes and strengths in words") {
    CHECK(how_soon(Urgency::emergency) == "emergency, call now");
    CHECK(how_soon(Urgency::same_day) == "same day");
    CHECK(how_soon(Urgency::urgent) == "urgent, days to two weeks");
    CHECK(how_soon(Urgency::routine) == "routine");
    CHECK(class_words(FindingClass::red_flag) == "red flag");
    CHECK(class_words(FindingClass::normal_variant) == "normal variant");
    CHECK(strength_words(Strength::common_practice) == "common practice");
    CHECK(strength_words(Strength::project_choice) == "project choice");
}

TEST_CASE("the lines that every output for people ends with") {
    std::string const text(safety_text());
    for (auto const* words :
         {"Decision support", "does not replace", "senior clinician", "local pathways", "distress",
          "family with care", "Nothing here is a diagnosis"}) {
        CAPTURE(words);
        CHECK(text.find(words) != std::string::npos);
    }
}

TEST_CASE("the provenance names engine, book and ontology with their digests") {
    Assessment a;
    a.engine = "1.2.3";
    a.rulebook = {"newborn", "0.1.0", "0123456789abcdef"};
    a.ontology = {"newborn", "0.2.0", "fedcba9876543210"};
    CHECK(provenance_words(a) ==
          "asterism 1.2.3; rulebook newborn 0.1.0 "
          "(01234567); ontology 0.2.0 (fedcba98)");
}
