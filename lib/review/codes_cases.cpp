// SPDX-License-Identifier: MIT
// Pages of codes about cases and records.
#include "review/codes.h"

#include <iterator>

namespace asterism {

namespace {

constexpr CodePage pages[]{
    {"age-like-gestation", "The age since birth is so long that a gestation may be meant.",
     "A newborn of 38 weeks of gestation is not 38 weeks old.",
     "Write the gestation under `gestation`, and the time since birth under `age`.",
     "age: 38w -> gestation: 38w0d"},
    {"bad-age", "The age of the record cannot be read or used.",
     "The age decides which rules apply and which norm.",
     "Write it as the format has it, such as P2D.", "\"P2X\" -> \"P2D\""},
    {"bad-sex", "The sex of the record is no word of its format.",
     "Norms and some findings depend on it.",
     "Write the format's word: male, female, other or unknown.",
     "\"gender\": \"boy\" -> \"gender\": \"male\""},
    {"contradiction", "The case states the same finding present and absent.",
     "Any answer would rest on one of two opposite statements.",
     "Keep the one that is true; a finding that is absent excludes those below it.",
     "findings: [cleft-palate], absent: [palate-anomaly] -> one of them"},
    {"dates-reversed", "The examination is dated before the birth.", "The age would be negative.",
     "Correct one date.", "born: 2026-03-02, examined-on: 2026-03-01 -> examined-on: 2026-03-02"},
    {"fake-birth", "The date of birth is 1970-01-01, which conversions write for no date.",
     "Taken at its word the baby would be decades old.",
     "Export the record with its date, or without one.",
     "\"1970-01-01T00:00:00Z\" -> the date of birth"},
    {"familial-not-present", "A finding is called familial but is not stated present.",
     "Only what the baby has can run in the family.",
     "State it under `findings`, or drop `familial`.",
     "absent: [ { finding: a, familial: true } ] -> absent: [a]"},
    {"hpo-cycle", "A term of the HPO file is its own ancestor.", "The file is damaged.",
     "Use the file as it was released.", "a is_a b, b is_a a -> the release"},
    {"hpo-json", "The HPO file in JSON is malformed or of another shape.",
     "Its terms cannot be read.", "Use the file as it was released.",
     "{\"graphs\": 1} -> the release"},
    {"hpo-no-id", "A term of the HPO file has no id.", "The file is damaged.",
     "Use the file as it was released.", "[Term] without id: -> the release"},
    {"hpo-twice", "A term of the HPO file is defined twice.",
     "The file is damaged, or two releases were joined.", "Use the file as it was released.",
     "id: HP:0000001 twice -> the release"},
    {"hpo-unknown-term", "A term of the HPO file lies below one that the file does not have.",
     "Statements about it could not be led to a finding.", "Use the whole file as it was released.",
     "is_a: HP:9999999 -> the release"},
    {"implausible", "The number is outside what a living newborn can have.",
     "Usually a slip of the unit or of the decimal point.", "Check number and unit.",
     "head-circumference: 345 cm -> head-circumference: 34.5 cm"},
    {"measured-twice", "A measure is given twice.", "Only one of the numbers could count.",
     "Keep one.", "head-circumference and OFC -> one of them"},
    {"no-code", "An Observation has no code.", "It cannot be told what was observed.", "Add it.",
     "{\"resourceType\": \"Observation\"} -> with \"code\""},
    {"no-id", "A phenopacket or one of its features has no id.",
     "It could not be told what is meant.", "Add it.",
     "{\"type\": {\"label\": \"Cleft palate\"}} -> {\"type\": {\"id\": \"HP:0000175\", ...}}"},
    {"no-patient", "The Bundle holds no Patient.", "The observations belong to nobody.",
     "Export the Patient with them.", "Bundle of Observations -> Bundle with the Patient"},
    {"no-subject", "With several patients, a resource does not say whose it is.",
     "A finding on the wrong baby is worse than none.", "Add `subject`.",
     "two Patients, Observation without subject -> \"subject\": {\"reference\": "
     "\"Patient/a\"}"},
    {"no-type", "A resource has no resourceType.", "It cannot be told what it is.", "Add it.",
     "{\"id\": \"o1\"} -> {\"resourceType\": \"Observation\", ...}"},
    {"not-a-bundle", "The file is not a FHIR Bundle.", "Nothing in it can be read as a case.",
     "Give a Bundle with the Patient and its observations.",
     "{\"resourceType\": \"Patient\"} -> {\"resourceType\": \"Bundle\", ...}"},
    {"not-hpo", "The file describes no HPO term.", "No code of a record could be understood by it.",
     "Give the release of the HPO as .obo or .json.", "notes.txt -> hp.obo"},
    {"phenopacket-v1", "The phenopacket is of version 1.",
     "There an excluded finding is written in another way and would be read as present.",
     "Convert it to version 2.", "\"negated\": true -> \"excluded\": true"},
    {"record-contradicts",
     "The imported record says of one finding that it is there and that it is not.",
     "The record cannot be asked; what is present is kept.", "Check the record.",
     "present and excluded HP:0000175 -> one of them"},
    {"unknown-member", "The record has a member that its format does not know.",
     "Misspelt members hide what they say; this one is not read.",
     "Take the name in the help line, or ignore it.",
     "\"phenotypicFeature\" -> \"phenotypicFeatures\""},
    {"unknown-subject", "The resource belongs to a patient who is not in the Bundle.",
     "A finding must not reach another baby.", "Correct the reference, or export that patient too.",
     "\"Patient/zz\" -> \"Patient/a\""},
};

}  // namespace

std::vector<CodePage> const& code_pages_of_cases() {
    static std::vector<CodePage> const all(std::begin(pages), std::end(pages));
    return all;
}

}  // namespace asterism
