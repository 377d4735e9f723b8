// SPDX-License-Identifier: MIT
// What every clinic does, one check a line: the book must say the same. Lines
// marked `no_source` are common practice, no source; others name the row that
// they rest on.
#include <string>
#include <vector>

#include "expectation.h"
#include "support/real_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

constexpr auto no_source = "common practice, no source";

/// A baby in whom everything else was looked at and is normal, and who should
/// see it.
struct Line {
    char const* source;
    char const* says;
    char const* findings;
    char const* expected;
    char const* more = "";  ///< further lines of the case
};

void check(std::vector<Line> const& lines) {
    for (auto const& line : lines) {
        CAPTURE(line.source);
        CAPTURE(line.says);
        std::string text = "examined: all\nfindings: [" + std::string(line.findings) + "]\n";
        std::string const more = line.more;
        if (more.find("history:") == std::string::npos) text += "history: none\n";
        if (more.find("sex:") == std::string::npos) text += "sex: male\n";
        expect(real_answer(text + more), line.expected);
    }
}

}  // namespace

TEST_CASE("signs of distress or illness: stop, call the senior clinician now") {
    check({
        {no_source, "distress", "respiratory-distress", "senior=emergency"},
        {no_source, "grunting", "grunting", "senior=emergency"},
        {no_source, "recession", "chest-recession", "senior=emergency"},
        {no_source, "apnoea", "apnoea", "senior=emergency"},
        {no_source, "looks ill", "ill-looking", "senior=emergency"},
        {no_source, "lethargic", "lethargy", "senior=emergency"},
        {no_source, "blue", "central-cyanosis", "senior=emergency, cardiology=emergency"},
        {no_source, "poor perfusion", "poor-perfusion", "senior=emergency"},
        {no_source, "pale", "pallor", "senior=emergency"},
        {no_source, "cold", "hypothermia", "senior=emergency"},
        {no_source, "fits", "seizures", "senior=emergency, neurology=same-day"},
        {no_source, "green vomit", "bilious-vomiting", "senior=emergency, surgery=emergency"},
        {no_source, "yellow on the first day", "early-jaundice", "senior=same-day"},
    });
}

TEST_CASE("scalp swellings by sutures, and the scalp skin defect") {
    check({
        {no_source, "caput settles in days", "caput-succedaneum", "nobody"},
        {no_source, "cephalohaematoma: jaundice watch, no referral", "cephalohaematoma", "nobody"},
        {no_source, "subgaleal bleed: emergency", "subgaleal-haemorrhage", "senior=emergency"},
        {no_source, "scalp defect: not dangerous itself", "scalp-aplasia-cutis", "!genetics"},
        {no_source, "moulding is normal", "moulding", "nobody"},
    });
    auto const defect =
        real_answer("examined: all\nhistory: none\nfindings: [scalp-aplasia-cutis]\n");
    CHECK_FALSE(defect.first_steps.empty());
    auto const with_limb = real_answer(
        "examined: all\nhistory: none\nfindings: [scalp-aplasia-cutis, "
        "transverse-limb-deficiency]\n");
    expect(with_limb, "genetics");
}

TEST_CASE(
    "ears: minor variants, alone no genetics; hearing and kidney are "
    "thought of") {
    check({
        {no_source, "low-set", "low-set-ears", "!genetics"},
        {no_source, "posteriorly rotated", "posteriorly-rotated-ears", "!genetics"},
        {no_source, "helix incomplete", "underfolded-helix", "!genetics"},
        {no_source, "unusually smooth", "simple-ear", "!genetics"},
        {no_source, "pit: hearing", "preauricular-pit", "!genetics, audiology=routine"},
        {no_source, "tag: hearing", "preauricular-tag", "!genetics, audiology=routine"},
    });
    auto const answer = real_answer("examined: all\nhistory: none\nfindings: [low-set-ears]\n");
    REQUIRE(answer.findings.size() == 1);
    CHECK(answer.findings.front().finding_class == FindingClass::minor_variant);
}

TEST_CASE(
    "eyes: spacing and slant are variants; the white, clouded or cleft "
    "eye is not") {
    check({
        {no_source, "wide spacing", "hypertelorism", "nobody"},
        {no_source, "upslant", "upslanting-palpebral-fissures", "nobody"},
        {no_source, "downslant", "downslanting-palpebral-fissures", "nobody"},
        {no_source, "white pupil", "white-pupil", "ophthalmology=same-day, genetics=urgent"},
        {no_source, "reflex asymmetric", "asymmetric-red-reflex",
         "ophthalmology=same-day, genetics"},
        {no_source, "cataract", "cataract", "ophthalmology, genetics"},
        {no_source, "coloboma", "iris-coloboma", "ophthalmology, genetics"},
    });
    auto const inherited = real_answer(
        "examined: all\nhistory: none\nfindings: [{ finding: "
        "hypertelorism, familial: true }]\n");
    REQUIRE(inherited.set_aside.size() == 1);
    CHECK(inherited.set_aside.front().why == "familial");
}

TEST_CASE("nose: choanal atresia to ENT and genetics, stuffiness to nobody") {
    check({
        {no_source, "both sides", "bilateral-choanal-atresia",
         "ent=emergency, senior=emergency, genetics"},
        {no_source, "one side", "unilateral-choanal-atresia", "ent=urgent, genetics=urgent"},
        {no_source, "blockage after suction is common", "nasal-stuffiness", "nobody"},
    });
    auto const pattern =
        real_answer("examined: all\nhistory: none\nfindings: [unilateral-choanal-atresia]\n");
    bool found = false;
    for (auto const& c : pattern.constellations)
        found = found || c.constellation.find("charge") != std::string::npos;
    CHECK(found);
}

TEST_CASE("mouth: clefts to the cleft team and ENT; tongue-tie too common to count") {
    check({
        {no_source, "cleft lip", "unilateral-cleft-lip", "plastics=same-day, ent"},
        {no_source, "cleft palate", "cleft-palate", "plastics=same-day, ent"},
        {no_source, "often isolated: alone no genetics", "unilateral-cleft-lip", "!genetics"},
        {no_source, "tongue-tie alone", "ankyloglossia", "nobody"},
        {no_source, "tongue-tie and poor feeding", "ankyloglossia, poor-latch", "ent"},
        {no_source, "natal tooth: note it", "natal-tooth", "nobody"},
        {no_source, "tongue-tie never makes a third variant",
         "ankyloglossia, low-set-ears, supernumerary-nipple", "!genetics"},
    });
}

TEST_CASE(
    "neck: webbing in a girl has its own rule; webbing and low-set ears "
    "are one field") {
    check({
        {no_source, "girl", "webbed-neck", "genetics", "sex: female\n"},
        {no_source, "boy", "webbed-neck", "!genetics"},
        {no_source, "one field", "webbed-neck, low-set-ears, supernumerary-nipple", "!genetics"},
        {no_source, "clavicle crepitus: birth fracture", "clavicle-crepitus", "orthopaedics"},
    });
    auto const answer = real_answer(
        "examined: all\nhistory: none\nsex: "
        "male\nfindings: [webbed-neck, low-set-ears, "
        "posteriorly-rotated-ears]\n");
    CHECK(answer.tallies.front().low == "1");
}

TEST_CASE("chest and heart") {
    check({
        {no_source, "pectus alone", "pectus-excavatum", "!genetics"},
        {no_source, "pectus carinatum alone", "pectus-carinatum", "!genetics"},
        {no_source, "periodic breathing is normal", "periodic-breathing", "nobody"},
        {no_source, "other murmur", "systolic-murmur", "cardiology=same-day"},
        {no_source, "weak femoral pulse: same day", "weak-femoral-pulses", "cardiology=same-day"},
        {no_source, "absent femoral pulse", "absent-femoral-pulses", "cardiology"},
        {no_source, "fast breathing", "tachypnoea", "senior=emergency"},
    });
    auto const duct = real_answer(
        "examined: all\nhistory: none\ngestation: 39w0d\nage: 30h\nfindings: "
        "[closing-duct-murmur]\n");
    for (auto const& referral : duct.referrals)
        if (referral.service == "cardiology" && referral.urgency)
            CHECK(*referral.urgency == Urgency::routine);
    expect(duct, "!senior");
    auto const murmur = real_answer("examined: all\nhistory: none\nfindings: [systolic-murmur]\n");
    CHECK_FALSE(murmur.first_steps.empty());
}

TEST_CASE("abdomen and anus") {
    check({
        {no_source, "reducible umbilical hernia: watch", "umbilical-hernia", "nobody"},
        {no_source, "stuck", "irreducible-umbilical-hernia", "surgery=emergency"},
        {no_source, "abdominal mass", "abdominal-mass", "surgery"},
        {no_source, "liver well below the ribs", "hepatomegaly", "surgery, senior"},
        {no_source, "liver edge felt is normal", "palpable-liver-edge", "nobody"},
        {no_source, "anus not patent", "imperforate-anus", "surgery=emergency"},
    });
}

TEST_CASE("genitalia") {
    check({
        {no_source, "oestrogen effect", "oestrogen-effect-vulva", "nobody", "sex: female\n"},
        {no_source, "discharge", "neonatal-vaginal-discharge", "nobody", "sex: female\n"},
        {no_source, "vaginal tag", "hymenal-tag", "nobody", "sex: female\n"},
        {no_source, "hydrocele", "hydrocele", "nobody"},
        {no_source, "undescended testis", "{ finding: undescended-testis, side: left }", "urology"},
        {no_source, "hooded foreskin", "hooded-foreskin", "urology"},
        {no_source, "hypospadias", "distal-hypospadias", "urology"},
        {no_source, "both impalpable", "bilateral-impalpable-testes",
         "endocrinology=same-day, urology=same-day"},
        {no_source, "hypospadias and an impalpable testis", "hypospadias, impalpable-testis",
         "endocrinology=same-day, urology=same-day"},
    });
    auto const urgent = real_answer(
        "examined: all\nhistory: none\nsex: undetermined\nfindings: "
        "[bilateral-impalpable-testes]\n");
    std::string steps;
    for (auto const& [action, text] : urgent.first_steps) steps += text + "\n";
    CHECK(steps.find("17") != std::string::npos);
    CHECK(steps.find("lectrolytes") != std::string::npos);
}

TEST_CASE(
    "hips: clunk by severity; risk factors bring a scan although the "
    "examination is normal") {
    check({
        {no_source, "clunk", "hip-clunk", "orthopaedics"},
        {no_source, "click without clunk", "hip-click", "!orthopaedics"},
        {no_source, "uneven thigh folds alone", "asymmetric-thigh-folds", "!orthopaedics"},
        {"AAP 2016: breech", "breech", "", "orthopaedics=routine",
         "history: [breech-presentation]\n"},
        {"AAP 2016: family history", "family", "", "orthopaedics=routine",
         "history: [family-history-hip-dysplasia]\n"},
    });
    auto const breech =
        real_answer("examined: all\nborn: 2031-04-02\nhistory: [breech-presentation]\n");
    bool found = false;
    for (auto const& due : breech.follow_up) {
        if (!due.from_date || !due.to_date) continue;
        found = found ||
                (to_text(*due.from_date) == "2031-04-30" && to_text(*due.to_date) == "2031-05-14");
    }
    CHECK(found);
}

TEST_CASE("hands and feet") {
    check({
        {no_source, "little-finger nubbin", "little-finger-nubbin", "nobody"},
        {no_source, "one hand variant never refers", "single-transverse-palmar-crease", "nobody"},
        {no_source, "long fingers", "long-fingers", "nobody"},
        {no_source, "short fingers", "brachydactyly", "nobody"},
        {no_source, "missing finger", "oligodactyly-hand", "genetics, plastics"},
        {no_source, "extra finger", "postaxial-polydactyly-hand", "plastics"},
        {no_source, "extra toe", "postaxial-polydactyly-foot", "plastics"},
    });
}

TEST_CASE("skin and back") {
    check({
        {no_source, "blue-grey macule", "blue-grey-macule", "nobody"},
        {no_source, "erythema toxicum", "erythema-toxicum", "nobody", "age: 30h\n"},
        {no_source, "dimple whose base is not seen", "deep-sacral-dimple", "neurosurgery"},
        {no_source, "simple dimple", "simple-sacral-dimple", "nobody"},
        {no_source, "hair tuft", "sacral-hair-tuft", "neurosurgery"},
        {no_source, "asymmetric cleft", "asymmetric-gluteal-cleft", "neurosurgery"},
    });
}

TEST_CASE("tone and reflexes: the neurological route") {
    check({
        {no_source, "stiff", "hypertonia", "neurology"},
        {no_source, "floppy", "hypotonia", "neurology"},
        {no_source, "head lag", "head-lag", "neurology"},
        {no_source, "face moves on one side", "facial-palsy", "neurology"},
        {no_source, "reflexes asymmetric", "asymmetric-tendon-reflexes", "neurology"},
        {no_source, "Moro asymmetric", "asymmetric-moro", "neurology"},
    });
}

TEST_CASE(
    "counting: three minor, two major, one major with two minor; one or "
    "two minor alone not") {
    check({
        {no_source, "one", "low-set-ears", "!genetics"},
        {no_source, "two", "low-set-ears, supernumerary-nipple", "!genetics"},
        {no_source, "three", "low-set-ears, supernumerary-nipple, single-transverse-palmar-crease",
         "genetics=urgent"},
        {no_source, "two majors in two systems", "hypospadias, unilateral-cleft-lip", "genetics"},
        {no_source, "one major", "unilateral-cleft-lip", "!genetics"},
        {no_source, "one major and one minor", "unilateral-cleft-lip, supernumerary-nipple",
         "!genetics"},
        {no_source, "one major and two minor",
         "unilateral-cleft-lip, supernumerary-nipple, "
         "single-transverse-palmar-crease",
         "genetics"},
    });
}
