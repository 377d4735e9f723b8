// SPDX-License-Identifier: MIT
// Published counting rules (so many of so many, majors and minors), checked on the shipped
// constellations from both sides of each threshold.
#include <string>

#include "score_example.h"
#include "testing.h"

using namespace asterism::testing;

namespace {

// Fried K, J Ment Defic Res 1980;24:181-185 (abstract read): 0 to 2 of eight signs excluded, 3 to 5
// chromosome test, 6 to 8 affected.
constexpr auto fried = "eight-signs-fried";
constexpr ScoreExample fried_strata[] = {
    {fried, fried, "epicanthal-folds", "", 1, false},
    {fried, fried, "epicanthal-folds, sandal-gap", "", 2, false},
    {fried, fried, "epicanthal-folds, sandal-gap, flat-face", "", 3, true},
    {fried, fried, "epicanthal-folds, sandal-gap, flat-face, hypotonia, redundant-nuchal-skin", "",
     5, true},
    {fried, fried,
     "epicanthal-folds, sandal-gap, flat-face, hypotonia, redundant-nuchal-skin, protruding-tongue",
     "", 6, true},
    {fried, fried,
     "epicanthal-folds, sandal-gap, flat-face, hypotonia, redundant-nuchal-skin, "
     "protruding-tongue, downturned-mouth, dysplastic-ear",
     "", 8, true},
    {fried, fried, "dysplastic-ear, small-ear, overfolded-helix", "", 1, false},
    {fried, fried, "flat-face, midface-retrusion, hypotonia, axial-hypotonia", "", 2, false},
};

// Hall B, Acta Paediatr Scand 1966;Suppl 171 (list read in a secondary table, counts from memory):
// all of 48 affected had four or more of ten signs, 89 % six or more.
constexpr auto hall = "ten-signs-hall";
constexpr ScoreExample hall_signs[] = {
    {hall, hall, "hypotonia, weak-moro, flat-face", "", 3, false},
    {hall, hall, "hypotonia, weak-moro, flat-face, upslanting-palpebral-fissures", "", 4, true},
    {hall, hall,
     "hypotonia, weak-moro, flat-face, upslanting-palpebral-fissures, small-ear, "
     "redundant-nuchal-skin, single-transverse-palmar-crease, joint-laxity",
     "", 8, true},
};

// Blake KD et al., Clin Pediatr 1998;37:159-173 (secondary page read): all four majors, or three
// majors and three minors.
constexpr auto blake = "charge-blake";
constexpr ScoreExample blake_counts[] = {
    {blake, "charge-blake/major",
     "iris-coloboma, bilateral-choanal-atresia, dysplastic-ear, facial-palsy", "", 4, true},
    {blake, "charge-blake/major", "iris-coloboma, bilateral-choanal-atresia, dysplastic-ear", "", 3,
     false},
    {blake, "charge-blake/minor",
     "iris-coloboma, choanal-stenosis, dysplastic-ear, tetralogy-of-fallot, micropenis", "", 2,
     false},
    {blake, "charge-blake/minor",
     "iris-coloboma, choanal-stenosis, dysplastic-ear, tetralogy-of-fallot, micropenis, cleft-lip",
     "", 3, true},
    {blake, "charge-blake/major",
     "microphthalmia, dysplastic-ear, tetralogy-of-fallot, micropenis, cleft-lip, "
     "oesophageal-atresia",
     "", 2, false},
};

// Verloes A, Am J Med Genet A 2005;133A:306-308 (review table read; the third way from memory):
// three majors, two and two minors; partial two and one; atypical two alone or one and three.
constexpr auto verloes = "charge-verloes";
constexpr ScoreExample verloes_counts[] = {
    {verloes, "charge-verloes/major",
     "retinal-coloboma, choanal-atresia, hypoplastic-semicircular-canals", "", 3, true},
    {verloes, "charge-verloes/major", "retinal-coloboma, choanal-atresia", "", 2, true},
    {verloes, "charge-verloes/major", "retinal-coloboma", "", 1, false},
    {verloes, "charge-verloes/minor", "retinal-coloboma, dysplastic-ear, tetralogy-of-fallot", "",
     2, false},
    {verloes, "charge-verloes/minor",
     "retinal-coloboma, dysplastic-ear, tetralogy-of-fallot, facial-palsy", "", 3, true},
    {verloes, "charge-verloes/minor", "dysplastic-ear, tetralogy-of-fallot, facial-palsy", "", 3,
     false},
};

// Hale CL et al., Am J Med Genet A 2016;170A:344-354 (review table read): two majors with any
// number of minors.
constexpr auto hale = "charge-hale";
constexpr ScoreExample hale_counts[] = {
    {hale, "charge-hale/major", "iris-coloboma, dysplastic-ear", "", 2, true},
    {hale, "charge-hale/major", "choanal-atresia, cleft-palate", "", 1, false},
    {hale, "charge-hale/major", "cleft-palate, microtia", "", 2, true},
    {hale, "charge-hale/major", "iris-coloboma, facial-palsy, tetralogy-of-fallot, micropenis", "",
     1, false},
};

// Solomon BD, Orphanet J Rare Dis 2011;6:56 (read): three of six component groups, each once.
constexpr auto vacterl = "vacterl";
constexpr ScoreExample vacterl_groups[] = {
    {vacterl, vacterl, "hemivertebra, imperforate-anus", "", 2, false},
    {vacterl, vacterl, "hemivertebra, imperforate-anus, oesophageal-atresia", "", 3, true},
    {vacterl, vacterl, "hemivertebra, butterfly-vertebra, sacral-agenesis", "", 1, false},
    {vacterl, vacterl, "oesophageal-atresia, tracheo-oesophageal-fistula, imperforate-anus", "", 2,
     false},
    {vacterl, vacterl, "ventricular-septal-defect, horseshoe-kidney, absent-thumb", "", 3, true},
    {vacterl, vacterl, "absent-thumb, radial-hypoplasia, preaxial-polydactyly-hand", "", 1, false},
    {vacterl, vacterl,
     "hemivertebra, imperforate-anus, ventricular-septal-defect, oesophageal-atresia, "
     "horseshoe-kidney, absent-thumb",
     "", 6, true},
};

// van der Burgt I et al., Am J Med Genet 1994;53:187-191 (table read): typical face with one major
// or two minors; suggestive face with two majors or three minors. Four of five features for a
// typical face and two for a suggestive one are the book's choice.
constexpr auto noonan = "noonan-van-der-burgt";
constexpr auto noonan_major = "noonan-van-der-burgt/major";
constexpr auto noonan_minor = "noonan-van-der-burgt/minor";
constexpr ScoreExample van_der_burgt[] = {
    {noonan, noonan_major, "hypertelorism, ptosis, low-set-ears, webbed-neck", "", 0, false},
    {noonan, noonan_major, "hypertelorism, ptosis, low-set-ears, webbed-neck, pulmonary-stenosis",
     "", 1, true},
    {noonan, noonan_minor, "hypertelorism, ptosis, low-set-ears, webbed-neck, wide-spaced-nipples",
     "", 1, false},
    {noonan, noonan_minor,
     "hypertelorism, ptosis, low-set-ears, webbed-neck, wide-spaced-nipples, "
     "ventricular-septal-defect",
     "", 2, true},
    {noonan, noonan_major, "hypertelorism, ptosis, pulmonary-stenosis", "", 1, false},
    {noonan, noonan_major, "hypertelorism, ptosis, pulmonary-stenosis, pectus-excavatum", "", 2,
     true},
    {noonan, noonan_minor, "hypertelorism, ptosis, ventricular-septal-defect, wide-spaced-nipples",
     "", 2, false},
    {noonan, noonan_minor,
     "hypertelorism, ptosis, ventricular-septal-defect, wide-spaced-nipples, undescended-testis",
     "sex: male", 3, true},
    {noonan, noonan_major, "hypertelorism, pulmonary-stenosis, pectus-excavatum, low-birth-length",
     "", 3, false},
};

// Tobias ES et al., Arch Dis Child 1999;81:513-514 (adapted table read): any of column A, two core
// signs, or one core with one further sign.
constexpr auto tobias = "tobias-22q11";
constexpr ScoreExample tobias_columns[] = {
    {tobias, "tobias-22q11/outflow", "interrupted-aortic-arch", "", 1, true},
    {tobias, "tobias-22q11/core", "ventricular-septal-defect", "", 1, false},
    {tobias, "tobias-22q11/core", "ventricular-septal-defect, cleft-palate", "", 2, true},
    {tobias, "tobias-22q11/further", "ventricular-septal-defect, hypotonia", "", 1, true},
    {tobias, "tobias-22q11/further", "hypotonia, long-fingers", "", 2, false},
};

// Adam MP et al., J Med Genet 2019;56:89-95 (read): long fissures with the outer third of the lower
// lid everted and two of four further signs make the typical face.
constexpr auto kabuki = "kabuki-face";
constexpr ScoreExample kabuki_signs[] = {
    {kabuki, "kabuki-face/further",
     "long-palpebral-fissures, lower-lid-eversion, arched-eyebrow, fetal-finger-pads", "", 2, true},
    {kabuki, "kabuki-face/further", "long-palpebral-fissures, lower-lid-eversion, arched-eyebrow",
     "", 1, false},
    {kabuki, "kabuki-face/further",
     "long-palpebral-fissures, arched-eyebrow, fetal-finger-pads, cupped-ear", "", 3, false},
    {kabuki, "kabuki-face/further",
     "long-palpebral-fissures, lower-lid-eversion, large-ear, cupped-ear, protruding-ear", "", 1,
     false},
};

// Metry D et al., Pediatrics 2009;124:1447-1456; Garzon MC et al., J Pediatr 2016;178:24-33 (tables
// read): haemangioma over 5 cm of the head with one major or two minors.
constexpr auto phace = "phace-criteria";
constexpr ScoreExample phace_criteria[] = {
    {phace, "phace-criteria/major", "segmental-facial-haemangioma", "", 0, false},
    {phace, "phace-criteria/major", "segmental-facial-haemangioma, coarctation", "", 1, true},
    {phace, "phace-criteria/minor", "segmental-facial-haemangioma, ventricular-septal-defect", "",
     1, false},
    {phace, "phace-criteria/minor",
     "segmental-facial-haemangioma, ventricular-septal-defect, cataract", "", 2, true},
    {phace, "phace-criteria/major", "coarctation, sternal-pit", "", 2, false},
};

// WHO 1999 case definitions (BMC Infect Dis 2014;14:305, table read): two of group A, or one of A
// and one of B; cataract and glaucoma count as one.
constexpr auto rubella = "congenital-rubella-who";
constexpr auto rubella_a = "congenital-rubella-who/group-a";
constexpr auto rubella_b = "congenital-rubella-who/group-b";
constexpr ScoreExample rubella_groups[] = {
    {rubella, rubella_a, "cataract, congenital-glaucoma", "", 1, false},
    {rubella, rubella_a, "cataract, sensorineural-hearing-loss", "", 2, true},
    {rubella, rubella_b, "cataract, purpura", "", 1, true},
    {rubella, rubella_b, "purpura, splenomegaly, microcephaly", "", 3, false},
    {rubella, rubella_b, "purpura, blueberry-muffin-spots", "", 1, false},
};

}  // namespace

TEST_CASE("signs of trisomy 21: the strata of Fried, the ten of Hall") {
    for (auto const& example : fried_strata) check(example);
    for (auto const& example : hall_signs) check(example);
    CHECK(possible_points(fried) == doctest::Approx(8));
    CHECK(possible_points(hall) == doctest::Approx(10));
}

TEST_CASE("the coloboma and choanal association by three counts side by side") {
    for (auto const& example : blake_counts) check(example);
    for (auto const& example : verloes_counts) check(example);
    for (auto const& example : hale_counts) check(example);
}

TEST_CASE("three of six component groups of the trunk and limbs") {
    for (auto const& example : vacterl_groups) check(example);
    CHECK(possible_points(vacterl) == doctest::Approx(6));
}

TEST_CASE("the combinations of van der Burgt") {
    for (auto const& example : van_der_burgt) check(example);
}

TEST_CASE("the three columns of Tobias") {
    for (auto const& example : tobias_columns) check(example);
}

TEST_CASE("the typical face of the 2019 consensus") {
    for (auto const& example : kabuki_signs) check(example);
}

TEST_CASE("haemangioma with majors and minors") {
    for (auto const& example : phace_criteria) check(example);
}

TEST_CASE("groups A and B of the rubella definition") {
    for (auto const& example : rubella_groups) check(example);
}
