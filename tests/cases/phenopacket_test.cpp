// SPDX-License-Identifier: MIT
// Fields and their meaning: the .proto files of the GA4GH Phenopacket schema, version 2, and the
// JSON rules of protobuf (facts/hpo/formats.md).
#include "cases/phenopacket.h"
#include "cases/record_facts.h"
#include "records.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

Records packet(std::string const& members, bool with_hpo = true) {
    return read_records(read_phenopackets, R"({"id": "p", )" + members + "}", with_hpo);
}

/// A packet with these features.
Records features(std::string const& list, bool with_hpo = true) {
    return packet(R"("phenotypicFeatures": [)" + list + "]", with_hpo);
}

std::string feature(std::string const& id, std::string const& more = "") {
    return R"({"type": {"id": ")" + id + R"(", "label": "x"})" + more + "}";
}

std::string subject(std::string const& members) {
    return R"("subject": {"id": "s", )" + members + "}";
}

}  // namespace

TEST_CASE("present, excluded, more specific, less specific") {
    auto const read =
        features(feature("HP:0000316") + "," + feature("HP:0000202", R"(, "excluded": true)") +
                 "," + feature("HP:0002373") + "," + feature("HP:0000369"));
    auto const& one = read.only();
    CHECK(one.baby.id.text == "p");
    CHECK(listed(one.baby.present) == "hypertelorism, seizures, low-set-ears");
    CHECK(listed(one.baby.absent) == "cleft-lip, cleft-palate");
    CHECK(mapped(one) == "exact from-above by-ancestor exact");
    CHECK(one.terms[2].via == "HP:0001250");
    CHECK(one.baby.nothing_examined());  // a feature that is not there is not examined
}

TEST_CASE("an excluded kind says nothing of the whole") {
    auto const read = features(feature("HP:0002373", R"(, "excluded": true)"));
    CHECK(mapped(read.only()) == "nowhere");
    CHECK(read.only().baby.absent.empty());
}

TEST_CASE("an alternate id is its id in force; without HPO neither it nor an ancestor maps") {
    auto const with = features(feature("HP:0000578"));
    CHECK(listed(with.only().baby.present) == "hypertelorism");
    CHECK(with.only().terms.front().via == "HP:0000316");
    auto const without = features(
        feature("HP:0000578") + "," + feature("HP:0002373") + "," + feature("HP:0000316"), false);
    CHECK(mapped(without.only()) == "nowhere nowhere exact");
}

TEST_CASE("terms of other ontologies and unknown ones are kept in the list") {
    auto const read = features(feature("OMIM:154700") + "," + feature("HP:9999999") + "," +
                               feature("HP:0000118"));
    CHECK(mapped(read.only()) == "nowhere nowhere nowhere");
    CHECK(read.only().baby.present.empty());
}

TEST_CASE("an id that findings share without a parent leaves them unsure, or all absent") {
    auto const there = features(feature("HP:0000960"));
    CHECK(mapped(there.only()) == "shared-id");
    CHECK(listed(there.only().baby.unsure) == "dimple, deep-dimple");
    auto const gone = features(feature("HP:0000960", R"(, "excluded": true)"));
    CHECK(listed(gone.only().baby.absent) == "dimple, deep-dimple");
}

TEST_CASE("sides and severity; what has no place is listed") {
    auto const read = features(
        feature("HP:0000369", R"(, "modifiers": [{"id": "HP:0012834"}])") + "," +
        feature("HP:0000369", R"(, "modifiers": [{"id": "HP:0012835"}, {"id": "HP:0012833"}])") +
        "," + feature("HP:0001250", R"(, "severity": {"id": "HP:0012828", "label": "Severe"})") +
        "," + feature("HP:0000316", R"(, "severity": {"id": "HP:0012825"}, "modifiers":
                       [{"id": "HP:0012832"}])"));
    auto const& one = read.only();
    CHECK(listed(one.baby.present) ==
          "low-set-ears right, low-set-ears left, seizures marked, hypertelorism");
    CHECK(left_out(one, "HP:0012833"));
    CHECK(left_out(one, "severity `mild`"));
    CHECK(left_out(one, "the side of HP:0000316"));
}

TEST_CASE("left there and right excluded go together; otherwise what is present stands") {
    auto const apart = features(
        feature("HP:0000369", R"(, "modifiers": [{"id": "HP:0012835"}])") + "," +
        feature("HP:0000369", R"(, "excluded": true, "modifiers": [{"id": "HP:0012834"}])"));
    CHECK(listed(apart.only().baby.absent) == "low-set-ears right");
    auto const against =
        features(feature("HP:0000369", R"(, "excluded": true)") + "," + feature("HP:0000369"));
    CHECK(listed(against.only().baby.present) == "low-set-ears");
    CHECK(against.only().baby.absent.empty());
    CHECK(against.warned("record-contradicts"));
    CHECK(against.cases.front().terms.size() == 2);
}

TEST_CASE("snake_case, null and defaults as protobuf allows them") {
    auto const read = packet(R"("phenotypic_features": [{"type": {"id": "HP:0000316"},
        "excluded": null, "severity": null}, {"type": {"id": "HP:0000369"}, "excluded": false}],
        "subject": {"id": "s", "sex": 1, "time_at_last_encounter":
        {"age": {"iso8601duration": "P2D"}}}, "meta_data": {"phenopacket_schema_version": "2.0.2"})");
    auto const& one = read.only();
    CHECK(listed(one.baby.present) == "hypertelorism, low-set-ears");
    CHECK(one.baby.sex == Sex::female);
    CHECK(one.baby.age == Duration{48});
    CHECK_FALSE(read.warned("unknown-member"));
}

TEST_CASE("sex: the four of the schema, and nothing else") {
    CHECK(packet(subject(R"("sex": "MALE")")).only().baby.sex == Sex::male);
    CHECK(packet(subject(R"("sex": "UNKNOWN_SEX")")).only().baby.sex == Sex::not_given);
    CHECK(packet(subject(R"("sex": "OTHER_SEX")")).only().baby.sex == Sex::undetermined);
    CHECK(packet(subject(R"("sex": "male")")).errors() == "1:43 bad-sex");
}

TEST_CASE("only an age after birth is an age") {
    auto const at = [](std::string const& time) {
        return packet(subject(R"("timeAtLastEncounter": )" + time));
    };
    CHECK(at(R"({"age": {"iso8601duration": "P3W"}})").only().baby.age == Duration{21 * 24});
    CHECK(at(R"({"age": {"iso8601duration": "P0D"}})").only().baby.age == Duration{0});
    auto const bare = at(R"({"age": {"iso8601duration": "P"}})");
    CHECK_FALSE(bare.only().baby.age);
    CHECK(bare.warned("bad-age"));
    for (auto const* other :
         {R"({"gestationalAge": {"weeks": 20, "days": 1}})",
          R"({"ageRange": {"start": {"iso8601duration": "P1D"}}})",
          R"({"ontologyClass": {"id": "HP:0003623"}})",
          R"({"interval": {"start": "2031-04-02T00:00:00Z", "end": "2031-04-03T00:00:00Z"}})"}) {
        CAPTURE(other);
        CHECK_FALSE(at(other).only().baby.age);
        CHECK(left_out(at(other).only(), "last encounter"));
    }
    auto const dated = at(R"({"timestamp": "2031-04-03T10:00:00Z"})");
    CHECK(to_text(dated.only().baby.examined_on.value()) == "2031-04-03");
    CHECK(at(R"({"age": {"iso8601duration": "3 days"}})").errors().ends_with("bad-age"));
}

TEST_CASE("durations: ISO 8601, whole numbers") {
    CHECK(parse_iso_duration("PT26H").value() == Duration{26});
    CHECK(parse_iso_duration("P1DT2H").value() == Duration{26});
    CHECK(parse_iso_duration("P1Y").value() == Duration{8766});
    CHECK(parse_iso_duration("PT90M").value() == Duration{2});  // to whole hours
    for (auto const* bad : {"", "P", "PT", "P1", "1D", "P1H", "PT1D", "P1.5D", "P-1D", "PDT1H",
                            "P1DT", "P99999999999D", "P1DT1HT1H"}) {
        CAPTURE(bad);
        CHECK_FALSE(parse_iso_duration(bad));
    }
    for (auto const hours : {0, 1, 24, 26, 72, 1000})
        CHECK(parse_iso_duration(to_iso_duration({hours})).value() == Duration{hours});
}

TEST_CASE("the birth date that conversions leave behind is not used") {
    CHECK(
        to_text(
            packet(subject(R"("dateOfBirth": "2031-04-02T00:00:00Z")")).only().baby.born.value()) ==
        "2031-04-02");
    auto const fake = packet(subject(R"("dateOfBirth": "1970-01-01T00:00:00Z")"));
    CHECK_FALSE(fake.only().baby.born);
    CHECK(fake.warned("fake-birth"));
    CHECK(
        packet(subject(R"("dateOfBirth": "2031-02-30T00:00:00Z")")).errors().ends_with("bad-date"));
}

TEST_CASE("resolved before, or begun after, is not there at the examination") {
    auto const read = packet(
        subject(R"("timeAtLastEncounter": {"age": {"iso8601duration": "P2D"}})") +
        R"(, "phenotypicFeatures": [)" +
        feature("HP:0000316", R"(, "resolution": {"age": {"iso8601duration": "P1D"}})") + "," +
        feature("HP:0001250", R"(, "onset": {"age": {"iso8601duration": "P3D"}})") + "," +
        feature("HP:0000369", R"(, "onset": {"age": {"iso8601duration": "P1D"}})") + "]");
    auto const& one = read.only();
    CHECK(listed(one.baby.present) == "low-set-ears");
    CHECK(one.terms[0].state == TermState::not_now);
    CHECK(one.terms[1].state == TermState::not_now);
    CHECK(left_out(one, "the onset of HP:0000369"));
}

TEST_CASE("measurements by LOINC, gestation by the convention") {
    auto const measurement = [](std::string const& code, std::string const& unit,
                                std::string const& value, std::string const& more = "") {
        return R"({"assay": {"id": ")" + code + R"("}, "value": {"quantity": {"unit": {"id": ")" +
               unit + R"("}, "value": )" + value + "}}" + more + "}";
    };
    auto const read =
        packet(R"("measurements": [)" + measurement("LOINC:9843-4", "UCUM:cm", "31.0") + "," +
               measurement("LOINC:29463-7", "UO:0000021", "2610") + "," +
               measurement("LOINC:8339-4", "UCUM:kg", "2.7") + "," +
               measurement("LOINC:76516-4", "UCUM:d", "270.0") + "," +
               measurement("LOINC:1-1", "UCUM:cm", "1") + "]");
    auto const& one = read.only();
    REQUIRE(one.baby.measures.size() == 2);
    CHECK(one.baby.measures[0].as_written.text == "31.0 cm");
    CHECK(one.baby.measures[0].step == doctest::Approx(0.1));
    CHECK(one.baby.measures[1].value == 2610);
    CHECK(to_text(one.baby.gestation.value()) == "38w4d");
    CHECK(left_out(one, "weight 2.7 kg"));
    CHECK(left_out(one, "LOINC:1-1"));
    auto const weeks =
        packet(R"("measurements": [)" + measurement("LOINC:76516-4", "UCUM:wk", "38") + "]");
    CHECK(to_text(weeks.only().baby.gestation.value()) == "38w");
    auto const refused =
        packet(R"("measurements": [)" + measurement("LOINC:76516-4", "UCUM:wk", "37.3") + "," +
               measurement("LOINC:9843-4", "UCUM:cm", "310") + "," +
               measurement("LOINC:29463-7", "UCUM:mm", "3000") + "," +
               measurement("LOINC:29463-7", "UCUM:g", R"("2610")") + "]");
    CHECK(refused.diagnostics.sorted().size() == 4);
    auto const later =
        packet(subject(R"("timeAtLastEncounter": {"age": {"iso8601duration": "P9Y"}})") +
               R"(, "measurements": [)" +
               measurement("LOINC:29463-7", "UCUM:g", "3000",
                           R"(, "timeObserved": {"age": {"iso8601duration": "P0D"}})") +
               "]");
    CHECK(later.only().baby.measures.empty());
    CHECK(left_out(later.only(), "LOINC:29463-7"));
}

TEST_CASE("the answer never reaches a case") {
    auto const read =
        packet(R"("phenotypicFeatures": [], "diseases": [{"term": {"id": "HP:0000316"}}],
        "interpretations": [{"id": "HP:0000316"}])");
    CHECK(read.only().baby.present.empty());
    CHECK(read.only().terms.empty());
    CHECK(left_out(read.only(), "diseases"));
    CHECK(left_out(read.only(), "interpretations"));
}

TEST_CASE("version 1 is refused, wherever it shows") {
    for (auto const* members :
         {R"("metaData": {"phenopacketSchemaVersion": "1.0.0"})",
          R"("subject": {"ageAtCollection": {"age": "P1D"}})",
          R"("phenotypicFeatures": [{"type": {"id": "HP:0000316"}, "negated": true}])"}) {
        CAPTURE(members);
        CHECK(packet(members).errors().find("phenopacket-v1") != std::string::npos);
    }
}

TEST_CASE("malformed packets: every problem of one run, each at its place") {
    auto const read = read_records(read_phenopackets, R"({
  "phenotypicFeatures": [
    {"type": {"label": "no id"}},
    {"excluded": true},
    "HP:0000316",
    {"type": {"id": "HP:0000316"}, "excluded": "true"},
    {"type": {"id": 316}}
  ],
  "subject": []
})");
    CHECK(
        read.errors() ==
        "1:1 no-id 3:14 no-id 4:5 no-id 5:5 wrong-form 6:48 wrong-form 7:14 no-id 7:21 wrong-form "
        "9:14 wrong-form");
    CHECK(read_records(read_phenopackets, "{").errors().ends_with("json-syntax"));
    CHECK(read_records(read_phenopackets, "[]").errors() == "1:1 wrong-form");
    CHECK(read_records(read_phenopackets, R"({"id": "a", "id": "b"})").errors() ==
          "1:13 duplicate-key");
}

TEST_CASE("an unknown member is warned of, with the nearest name") {
    auto const read = packet(R"("phenotypicFeature": [])");
    CHECK(read.warned("unknown-member"));
    CHECK(read.diagnostics.sorted().front().help.find("phenotypicFeatures") != std::string::npos);
}

TEST_CASE("JSON Lines keep their line numbers; families and cohorts hold packets") {
    auto const lines =
        read_records(read_phenopackets, "{\"id\": \"a\"}\n\n{\"id\": \"b\"}\n{\"id\": 3}\n");
    CHECK(lines.cases.size() == 3);
    CHECK(lines.errors() == "4:1 no-id 4:8 wrong-form");
    auto const family = read_records(read_phenopackets, R"({"id": "f", "proband": {"id": "kid"},
        "relatives": [{"id": "x"}], "consanguinousParents": true})");
    CHECK(family.only().baby.id.text == "kid");
    CHECK(listed(family.only().baby.present) == "consanguinity");
    CHECK(left_out(family.only(), "relatives"));
    auto const cohort =
        read_records(read_phenopackets, R"({"id": "c", "members": [{"id": "a"}, {"id": "b"}]})");
    CHECK(cohort.cases.size() == 2);
}

TEST_CASE("any truncation and any flipped byte of a packet ends well") {
    std::string const text =
        R"({"id": "p", "subject": {"id": "s", "sex": "MALE", "dateOfBirth": "2031-04-02T00:00:00Z"},
        "phenotypicFeatures": [{"type": {"id": "HP:0000316"}, "modifiers": [{"id": "HP:0012834"}],
        "onset": {"age": {"iso8601duration": "P1D"}}}], "measurements": [{"assay": {"id":
        "LOINC:9843-4"}, "value": {"quantity": {"unit": {"id": "UCUM:cm"}, "value": 31.0}}}]})";
    for (std::size_t i = 0; i < text.size(); ++i) {
        CHECK_FALSE(read_records(read_phenopackets, text.substr(0, i)).errors().empty());
        auto copy = text;
        copy[i] = static_cast<char>(copy[i] ^ 0x11);
        read_records(read_phenopackets, copy);
    }
}
