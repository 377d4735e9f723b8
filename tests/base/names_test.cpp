// SPDX-License-Identifier: MIT
/// Comparing names: folding, edit distance and the nearest known names.
#include <string>
#include <vector>

#include "base/fold.h"
#include "base/nearest.h"
#include "testing.h"

using namespace asterism;

namespace {

using Names = std::vector<std::string>;

struct Pair {
    char const* a;
    char const* b;
};

struct Distance {
    char const* a;
    char const* b;
    int edits;
};

}  // namespace

TEST_CASE("spellings of one name fold to one text") {
    for (Pair const& pair : {
             Pair{"Low-set ears", "low set ears"}, Pair{"LOW_SET  EARS", "lowsetears"},
             Pair{"haemangioma", "hemangioma"}, Pair{"Haemangioma", "HEMANGIOMA"},
             Pair{"oesophageal", "esophageal"}, Pair{"oedema", "edema"},
             Pair{"caf\u00e9-au-lait", "cafe au lait"},
             Pair{"cafe\u0301 au lait", "caf\u00e9 au lait"}, Pair{"M\u00f6bius", "Mobius"},
             Pair{"h\u00e6mangioma", "h\u00e6mangioma"}, Pair{"stra\u00dfe", "STRASSE"},
             Pair{"\ufb01nger", "finger"},                // ligature
             Pair{"clino\u00addactyly", "clinodactyly"},  // soft hyphen
             Pair{"sub\u2010mucous", "submucous"},        // typographic hyphen
             Pair{"sub\u2013mucous", "sub-mucous"},       // dash
             Pair{"Erb's palsy", "Erb\u2019s palsy"}, Pair{"(x)", "x"},
             Pair{"\uff54ag", "tag"},  // full width
         }) {
        CAPTURE(std::string(pair.a));
        CHECK(fold(pair.a) == fold(pair.b));
    }
}

TEST_CASE("different names stay apart") {
    for (Pair const& pair : {
             Pair{"hypertelorism", "hypotelorism"},
             Pair{"grade 1", "grade 2"},
             Pair{"microtia", "macrotia"},
             Pair{"<3rd", ">3rd"},
             Pair{"ptosis", "proptosis"},
             Pair{"\u0436", "\u0437"},
         }) {
        CAPTURE(std::string(pair.a));
        CHECK(fold(pair.a) != fold(pair.b));
    }
}

TEST_CASE("folding gives plain small letters and digits") {
    CHECK(fold("Low-set Ears, 2") == "lowsetears2");
    CHECK(fold("") == "");
    CHECK(fold(" -- ") == "");
    CHECK(fold("\u0416") == "\u0436");
}

TEST_CASE("folding a folded name changes nothing") {
    for (auto const* name : {"Haemangioma", "caf\u00e9-au-lait", "oesophagus", "Low-set ears",
                             "stra\u00dfe", "HP:0000369"}) {
        CAPTURE(std::string(name));
        CHECK(fold(fold(name)) == fold(name));
    }
}

TEST_CASE("ill-formed UTF-8 folds to its ASCII letters") {
    CHECK(fold("ab\xff"
               "cd") == "abcd");
    CHECK(fold("\xc3") == "");
    CHECK(fold("Low\x80-set") == "lowset");
}

TEST_CASE("well-formed UTF-8 is known from ill-formed") {
    for (auto const* good : {"", "abc", "\u00e9", "\u4e2d", "\U0001F476", "\xEF\xBB\xBF"})
        CHECK(is_utf8(good));
    for (auto const* bad : {"\x80", "\xc3", "\xc0\xaf", "\xe0\x80\xaf", "\xed\xa0\x80",
                            "\xf4\x90\x80\x80", "\xff", "\xe4\xb8"})
        CHECK_FALSE(is_utf8(bad));
}

TEST_CASE("the first ill-formed byte is named, and only when there is one") {
    std::size_t bad = 77;
    CHECK(is_utf8("abc", &bad));
    CHECK(bad == 77);
    CHECK_FALSE(
        is_utf8("\u00e9"
                "b\xff",
                &bad));
    CHECK(bad == 3);
    CHECK_FALSE(is_utf8("ab\xe4\xb8", &bad));
    CHECK(bad == 2);
}

TEST_CASE("width on a terminal") {
    CHECK(display_width("") == 0);
    CHECK(display_width("abc") == 3);
    CHECK(display_width("\u00e9") == 1);
    CHECK(display_width("e\u0301") == 1);
    CHECK(display_width("\u4e2d\u6587") == 4);
}

TEST_CASE("edits are counted over code points, a swap of neighbours being one") {
    for (Distance const& row : {
             Distance{"", "", 0},
             Distance{"a", "", 1},
             Distance{"abc", "abc", 0},
             Distance{"abc", "abd", 1},
             Distance{"abc", "ab", 1},
             Distance{"abc", "xabc", 1},
             Distance{"abcd", "abdc", 1},
             Distance{"ca", "abc", 3},
             Distance{"kitten", "sitting", 3},
             Distance{"\u00e9", "e", 1},
             Distance{"\u4e2d\u6587", "\u6587\u4e2d", 1},
             Distance{"\U0001F476", "", 1},
         }) {
        CAPTURE(std::string(row.a));
        CAPTURE(std::string(row.b));
        CHECK(edit_distance(row.a, row.b, 9) == row.edits);
        CHECK(edit_distance(row.b, row.a, 9) == row.edits);
        CHECK(edit_distance(row.a, row.b, row.edits) == row.edits);
        if (row.edits > 0) CHECK_FALSE(edit_distance(row.a, row.b, row.edits - 1));
    }
}

TEST_CASE("a slip finds the name meant") {
    Names const known{"palmar crease", "plantar crease", "preauricular pit", "low-set ears",
                      "hypertelorism", "hypotelorism",   "hemangioma"};
    struct Slip {
        char const* typed;
        char const* meant;
    };
    for (Slip const& slip : {
             Slip{"palmer crease", "palmar crease"},
             Slip{"palamr crease", "palmar crease"},
             Slip{"PALMAR-CREASE", "palmar crease"},
             Slip{"lowset ear", "low-set ears"},
             Slip{"haemangoma", "hemangioma"},
             Slip{"hypertelorisms", "hypertelorism"},
             Slip{"preauriclar pit", "preauricular pit"},
         }) {
        CAPTURE(std::string(slip.typed));
        auto const names = nearest(slip.typed, known);
        REQUIRE_FALSE(names.empty());
        CHECK(names.front() == slip.meant);
    }
}

TEST_CASE("a name that is far from all is near to none") {
    Names const known{"palmar crease", "low-set ears"};
    CHECK(nearest("tachycardia", known).empty());
    CHECK(nearest("", known).empty());
    CHECK(nearest("--", known).empty());
    CHECK(nearest("x", {}).empty());
}

TEST_CASE("the nearest come first, at most as many as asked, each once") {
    Names const known{"abcdexyz", "abcdefgx", "abcdefgh", "abcdefgh", "abcdefhg"};
    CHECK(nearest("abcdefgh", known, 1) == Names{"abcdefgh"});
    auto const three = nearest("abcdefgh", known);
    CHECK(three == Names{"abcdefgh", "abcdefgx", "abcdefhg"});
    CHECK(nearest("abcdefgh", known, 0).empty());
}

TEST_CASE("a typed word inside a name is near, after true slips") {
    Names const known{"simian crease hand", "creases", "toe"};
    CHECK(nearest("crease", known) == Names{"creases", "simian crease hand"});
    CHECK(nearest("oe", Names{"toe phalanx"}).empty());
}

TEST_CASE("nearest does not depend on the order of the known names") {
    Names const one{"abcd1", "abcd2", "abcd3", "abcd4"};
    Names const other{"abcd4", "abcd2", "abcd1", "abcd3"};
    CHECK(nearest("abcd", one) == nearest("abcd", other));
}

TEST_CASE("the question lists the names") {
    CHECK(did_you_mean(Names{}) == "");
    CHECK(did_you_mean(Names{"a"}) == "did you mean `a`");
    CHECK(did_you_mean(Names{"a", "b"}) == "did you mean `a` or `b`");
    CHECK(did_you_mean(Names{"a", "b", "c"}) == "did you mean `a`, `b` or `c`");
    CHECK(did_you_mean("palmer crease", {"palmar crease"}) == "did you mean `palmar crease`");
    CHECK(did_you_mean("zzzzzz", {"palmar crease"}) == "");
}
