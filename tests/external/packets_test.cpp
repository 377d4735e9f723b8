// SPDX-License-Identifier: MIT
// Real babies from open phenopackets: Danis D et al., HGG Advances 2025, from
// the community repository of published cases (BSD-3-Clause). Findings only,
// each packet cited by the PubMed id of its case report. Typed in below so that
// a plain clone checks them; where ASTERISM_DATA is set the packets themselves
// are read and must say the same.
#include <algorithm>

#include <fmt/format.h>

#include "expectation.h"
#include "packet.h"
#include "support/real_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

/// One baby of a case report, in our words; HPO ids stand in the packet.
struct Baby {
    char const* file;
    char const* pmid;
    char const* sex;
    char const* age;
    std::vector<std::string> findings;
    char const* expected;
    char const* rule;  ///< one that must have decided for genetics
};

std::vector<Baby> const babies{
    {"FGFR2__PMID_40557693_Case_Description.json",
     "PMID:40557693",
     "male",
     "1d",
     {"frontal-bossing", "downslanting-palpebral-fissures", "depressed-nasal-bridge", "proptosis",
      "hypertelorism", "pulmonary-hypertension", "patent-foramen-ovale",
      "ventricular-septal-defect", "broad-thumb", "broad-hallux"},
     "genetics, ophthalmology, cardiology",
     "hand-broad-thumb-and-great-toe"},
    {"MAX__PMID_38141607_Individuals_3_P3.json",
     "PMID:38141607",
     "male",
     "1d",
     {"postaxial-polydactyly-hand", "postaxial-polydactyly-foot", "atrial-septal-defect",
      "hypospadias", "renal-agenesis", "single-umbilical-artery"},
     "genetics, urology, plastics",
     "limb-extra-digits-hand-and-foot"},
    {"COG8__PMID_30690882_case_report.json",
     "PMID:30690882",
     "male",
     "2d",
     {"anteverted-nares", "short-nose", "thin-vermilion", "upslanting-palpebral-fissures",
      "micrognathia", "thick-nuchal-fold", "deep-philtrum", "hypertelorism", "low-set-ears",
      "camptodactyly", "clenched-hands", "short-neck"},
     "genetics",
     "three-independent-minor-variants"},
    {"CHD7__PMID_17661815_Patient_B_III_1.json",
     "PMID:17661815",
     "male",
     "19d",
     {"retrognathia", "facial-palsy", "bifid-uvula", "undescended-testis", "generalised-hypotonia",
      "cupped-ear", "retinal-coloboma", "atrial-septal-defect", "dysphagia"},
     "genetics, ophthalmology, neurology",
     "neuro-floppy-to-genetics"},
    {"RERE__PMID_29330883_Subject_7.json",
     "PMID:29330883",
     "male",
     "32d",
     {"prominent-forehead", "depressed-nasal-bridge", "choanal-atresia", "hypospadias", "ptosis",
      "coloboma", "hypotonia", "ventricular-septal-defect", "low-set-ears", "redundant-nuchal-skin",
      "wide-spaced-nipples"},
     "genetics, ophthalmology, ent, urology",
     "choana-blocked"},
    {"PTPN11__PMID_28074573_ST1.json",
     "PMID:28074573",
     "female",
     "2m",
     {"wide-spaced-nipples", "hypertelorism", "webbed-neck", "low-posterior-hairline",
      "downslanting-palpebral-fissures", "triangular-face", "low-set-ears", "shield-chest",
      "hypotonia"},
     "genetics, neurology",
     "webbed-neck-in-a-girl"},
};

void check_answer(Baby const& baby, std::string const& text) {
    auto const answer = real_answer(text);
    expect(answer, baby.expected);
    CHECK(decided_by(answer, "genetics", baby.rule));
    for (auto const& referral : answer.referrals) {
        if (referral.verdict == Verdict::suggested) CHECK_FALSE(referral.reasons.empty());
    }
}

}  // namespace

TEST_CASE(
    "real babies as typed from their packets: who should see them, and "
    "by which rule") {
    for (auto const& baby : babies) {
        CAPTURE(baby.pmid);
        check_answer(baby, fmt::format("findings: [{}]\nsex: {}\nage: {}\n",
                                       fmt::join(baby.findings, ", "), baby.sex, baby.age));
    }
}

TEST_CASE("the packets themselves say what was typed, and get the same answer") {
    for (auto const& baby : babies) {
        auto const file = data_file(std::string("phenopackets/dysmorphic/") + baby.file);
        if (!file) return;
        CAPTURE(baby.pmid);
        CHECK(file->filename().string().find(std::string("PMID_") + (baby.pmid + 5)) !=
              std::string::npos);
        auto const packet = read_packet(*file);
        auto const found = stated_findings(packet, *real_book().ontology);
        CHECK(packet.sex == baby.sex);
        for (auto const& finding : baby.findings) {
            CAPTURE(finding);
            CHECK(std::find(found.present.begin(), found.present.end(), finding) !=
                  found.present.end());
        }
        check_answer(baby, case_text(packet, found));
    }
}

TEST_CASE("what a packet excludes reads as absent, never as present") {
    auto const file = data_file("phenopackets/dysmorphic/RERE__PMID_29330883_Subject_7.json");
    if (!file) return;
    auto const packet = read_packet(*file);
    auto const found = stated_findings(packet, *real_book().ontology);
    for (auto const* absent : {"cleft-lip", "micrognathia", "preauricular-pit"}) {
        CAPTURE(absent);
        CHECK(std::find(found.absent.begin(), found.absent.end(), absent) != found.absent.end());
        CHECK(std::find(found.present.begin(), found.present.end(), absent) == found.present.end());
    }
}

TEST_CASE("ages of packets in days") {
    CHECK(days_of("P1D") == 1);
    CHECK(days_of("P3W") == 21);
    CHECK(days_of("P1M2D") == 32);
    CHECK(days_of("P1Y") == 365);
    CHECK(days_of("P0D") == 0);
    for (auto const* none : {"", "P", "1D", "P1H", "GA 23w0d"}) {
        CAPTURE(none);
        CHECK(days_of(none) == -1);
    }
}
