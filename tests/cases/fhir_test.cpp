// SPDX-License-Identifier: MIT
// Meaning of the fields: FHIR R4 (facts/hpo/formats.md); SNOMED CT codes 52101004 present, 2667000
// absent, 7771000 left, 24028007 right, 51440002 both sides; LOINC answers LA9633-4, LA9634-2.
#include "cases/fhir.h"
#include "records.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::string const patient =
    R"({"resource": {"resourceType": "Patient", "id": "b1", "gender": "female", "birthDate": "2031-04-02"}})";

Records bundle(std::string const& entries, bool with_hpo = true) {
    return read_records(
        read_fhir,
        R"({"resourceType": "Bundle", "type": "collection", "entry": [)" + entries + "]}",
        with_hpo);
}

std::string coded(std::string const& system, std::string const& code,
                  std::string const& display = "") {
    return R"({"coding": [{"system": ")" + system + R"(", "code": ")" + code +
           R"(", "display": ")" + display + R"("}]})";
}

std::string hpo(std::string const& code) {
    return coded("http://human-phenotype-ontology.org", code);
}

std::string observation(std::string const& code, std::string const& more) {
    return R"(, {"resource": {"resourceType": "Observation", "status": "final", "code": )" + code +
           ", " + more + "}}";
}

std::string condition(std::string const& code, std::string const& more = "") {
    return R"(, {"resource": {"resourceType": "Condition", "code": )" + code + more + "}}";
}

std::string status(std::string const& which, std::string const& code) {
    return ", \"" + which + "\": " + coded("http://terminology.hl7.org/x", code);
}

}  // namespace

TEST_CASE("patient, findings true and false, more specific ones") {
    auto const read = bundle(patient + observation(hpo("HP:0000316"), R"("valueBoolean": true)") +
                             observation(hpo("HP:0000202"), R"("valueBoolean": false)") +
                             observation(hpo("HP:0002373"), R"("valueBoolean": true,
                                         "effectiveDateTime": "2031-04-03T10:00:00+02:00")"));
    auto const& one = read.only();
    CHECK(one.baby.id.text == "b1");
    CHECK(one.baby.sex == Sex::female);
    CHECK(to_text(one.baby.born.value()) == "2031-04-02");
    CHECK(to_text(one.baby.examined_on.value()) == "2031-04-03");
    CHECK(listed(one.baby.present) == "hypertelorism, seizures");
    CHECK(listed(one.baby.absent) == "cleft-lip, cleft-palate");
    CHECK(mapped(one) == "exact from-above by-ancestor");
    CHECK_FALSE(one.baby.age);  // two dates make no age in hours
}

TEST_CASE("coded values: present, absent, or what was seen") {
    auto const value = [](std::string const& concept_json) {
        return "\"valueCodeableConcept\": " + concept_json;
    };
    auto const sct = std::string("http://snomed.info/sct");
    auto const read =
        bundle(patient + observation(hpo("HP:0000316"), value(coded(sct, "52101004"))) +
               observation(hpo("HP:0000369"), value(coded(sct, "2667000"))) +
               observation(hpo("HP:0001250"), value(coded("http://loinc.org", "LA9634-2"))) +
               observation(coded("http://loinc.org", "29545-1"), value(hpo("HP:0000175"))));
    CHECK(listed(read.only().baby.present) == "hypertelorism, cleft-palate");
    CHECK(listed(read.only().baby.absent) == "low-set-ears, seizures");
}

TEST_CASE("not examined is not absent") {
    auto const read = bundle(
        patient + observation(hpo("HP:0000316"), R"("dataAbsentReason": {"text": "not done"})"));
    CHECK(read.only().baby.present.empty());
    CHECK(read.only().baby.absent.empty());
    CHECK(read.only().terms.front().state == TermState::not_examined);
}

TEST_CASE("sides by SNOMED CT body site") {
    auto const at = [](std::string const& code) {
        return "\"valueBoolean\": true, \"bodySite\": " + coded("http://snomed.info/sct", code);
    };
    auto const read = bundle(patient + observation(hpo("HP:0000369"), at("7771000")) +
                             observation(hpo("HP:0000369"), at("24028007")) +
                             observation(hpo("HP:0000369"), at("51440002")) +
                             observation(hpo("HP:0000316"), at("7771000")));
    CHECK(listed(read.only().baby.present) ==
          "low-set-ears left, low-set-ears right, low-set-ears both, hypertelorism");
    CHECK(left_out(read.only(), "the side of"));
}

TEST_CASE("a code of another system maps by a name that is exactly ours, and by no other") {
    auto const read =
        bundle(patient + condition(coded("http://snomed.info/sct", "87979003", "Cleft palate")) +
               condition(coded("http://snomed.info/sct", "1", "Cleft palate with something else")) +
               condition(R"({"text": "low set ears"})") +
               condition(coded("http://hl7.org/fhir/sid/icd-10", "Q90.9", "a diagnosis")));
    CHECK(listed(read.only().baby.present) == "cleft-palate, low-set-ears");
    CHECK(mapped(read.only()) == "by-name nowhere by-name nowhere");
    CHECK(read.only().terms.front().id.text == "87979003");
}

TEST_CASE("conditions: refuted is absent, unconfirmed unsure, resolved not there") {
    auto const read =
        bundle(patient + condition(hpo("HP:0000316"), status("verificationStatus", "refuted")) +
               condition(hpo("HP:0000175"), status("verificationStatus", "provisional")) +
               condition(hpo("HP:0001250"), status("clinicalStatus", "resolved")) +
               condition(hpo("HP:0000204"), status("verificationStatus", "entered-in-error")) +
               condition(hpo("HP:0000369"), status("verificationStatus", "confirmed")));
    auto const& baby = read.only().baby;
    CHECK(listed(baby.present) == "low-set-ears");
    CHECK(listed(baby.absent) == "hypertelorism");
    CHECK(listed(baby.unsure) == "cleft-palate");
    CHECK(left_out(read.only(), "the Condition HP:0000204"));
}

TEST_CASE("a voided observation is listed and not read") {
    auto const read = bundle(patient + R"(, {"resource": {"resourceType": "Observation",
        "status": "entered-in-error", "code": )" +
                             hpo("HP:0000316") + R"(, "valueBoolean": true}})");
    CHECK(read.only().baby.present.empty());
    CHECK(left_out(read.only(), "HP:0000316"));
}

TEST_CASE("measures, gestation and age") {
    auto const quantity = [](std::string const& code, std::string const& value,
                             std::string const& unit) {
        return observation(coded("http://loinc.org", code),
                           R"("valueQuantity": {"value": )" + value +
                               R"(, "system": "http://unitsofmeasure.org", "code": ")" + unit +
                               "\"}");
    };
    auto const read = bundle(patient + quantity("9843-4", "31.0", "cm") +
                             quantity("29463-7", "2.61", "kg") + quantity("76516-4", "270", "d") +
                             quantity("30525-0", "26", "h") + quantity("2339-0", "50", "mg/dL"));
    auto const& one = read.only();
    REQUIRE(one.baby.measures.size() == 2);
    CHECK(one.baby.measures[0].as_written.text == "31.0 cm");
    CHECK(one.baby.measures[1].value == 2610);
    CHECK(to_text(one.baby.gestation.value()) == "38w4d");
    CHECK(one.baby.age == Duration{26});
    CHECK(left_out(one, "2339-0"));
}

TEST_CASE("components are read as observations are") {
    auto const read = bundle(patient + observation(R"({"text": "face"})", R"("component": [
        {"code": )" + hpo("HP:0000316") + R"(, "valueBoolean": true},
        {"code": )" + hpo("HP:0000175") + R"(, "valueBoolean": false}])"));
    CHECK(listed(read.only().baby.present) == "hypertelorism");
    CHECK(listed(read.only().baby.absent) == "cleft-palate");
}

TEST_CASE("several patients keep their findings apart") {
    auto const read = bundle(
        R"({"fullUrl": "urn:uuid:1", "resource": {"resourceType": "Patient", "id": "a"}},
           {"fullUrl": "https://x.example/fhir/Patient/b", "resource": {"resourceType": "Patient", "id": "b"}})" +
        observation(hpo("HP:0000316"),
                    R"("valueBoolean": true, "subject": {"reference": "urn:uuid:1"})") +
        observation(hpo("HP:0000369"),
                    R"("valueBoolean": true, "subject": {"reference": "Patient/b"})"));
    REQUIRE(read.cases.size() == 2);
    CHECK(listed(read.cases[0].baby.present) == "hypertelorism");
    CHECK(listed(read.cases[1].baby.present) == "low-set-ears");
    auto const lost = bundle(R"({"resource": {"resourceType": "Patient", "id": "a"}},
        {"resource": {"resourceType": "Patient", "id": "b"}})" +
                             observation(hpo("HP:0000316"), R"("valueBoolean": true)") +
                             observation(hpo("HP:0000316"), R"("valueBoolean": true,
                                         "subject": {"reference": "Patient/c"})"));
    CHECK(lost.errors().find("no-subject") != std::string::npos);
    CHECK(lost.errors().find("unknown-subject") != std::string::npos);
}

TEST_CASE("who the patient is, and other resources, stay outside and are listed") {
    auto const read = bundle(
        R"({"resource": {"resourceType": "Patient", "id": "b", "name": [{"family": "Invented"}]}},
           {"resource": {"resourceType": "MedicationStatement", "status": "active"}})");
    CHECK(left_out(read.only(), "Patient.name"));
    CHECK(left_out(read.only(), "MedicationStatement"));
}

TEST_CASE("malformed Bundles: clear errors at their places") {
    CHECK(read_records(read_fhir, R"({"resourceType": "Patient"})").errors() ==
          "1:18 not-a-bundle");
    CHECK(read_records(read_fhir, "{}").errors() == "1:1 not-a-bundle");
    CHECK(bundle("").errors() == "1:1 no-patient");
    CHECK(bundle("5").errors().find("wrong-form") != std::string::npos);
    CHECK(bundle(R"({"resource": {"id": "x"}})").errors().find("no-type") != std::string::npos);
    CHECK(bundle(patient + observation("{}", R"("valueBoolean": true)")).errors().find("no-code") !=
          std::string::npos);
    CHECK(bundle(patient + observation(hpo("HP:0000316"), R"("valueBoolean": "true")"))
              .errors()
              .find("wrong-form") != std::string::npos);
    CHECK(bundle(R"({"resource": {"resourceType": "Patient", "gender": "F"}})")
              .errors()
              .find("bad-sex") != std::string::npos);
}

TEST_CASE("any truncation and any flipped byte of a Bundle ends well") {
    auto const text = R"({"resourceType": "Bundle", "entry": [)" + patient +
                      observation(hpo("HP:0000316"), R"("valueBoolean": true)") +
                      condition(hpo("HP:0000175"), status("verificationStatus", "refuted")) + "]}";
    for (std::size_t i = 0; i < text.size(); ++i) {
        CHECK_FALSE(read_records(read_fhir, text.substr(0, i)).errors().empty());
        auto copy = text;
        copy[i] = static_cast<char>(copy[i] ^ 0x11);
        read_records(read_fhir, copy);
    }
}
