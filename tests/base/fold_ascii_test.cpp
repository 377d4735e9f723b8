// SPDX-License-Identifier: MIT
#include <random>

#include "base/fold.h"
#include "testing.h"

using namespace asterism;

TEST_CASE("text of ASCII alone folds as it does beside a mark, which folding takes away") {
    // A combining accent at the end sends the text the long way, through Unicode's own tables.
    std::mt19937 random(11);
    for (int turn = 0; turn < 5000; ++turn) {
        std::string text;
        for (auto length = random() % 24; length > 0; --length)
            text += static_cast<char>(1 + random() % 127);
        CAPTURE(text);
        CHECK(fold(text) == fold(text + "\u0301"));
        CHECK(is_utf8(text));
    }
    CHECK(fold("Low-Set EARS (oedema) > 3%") == "lowsetearsedema>3%");
}

TEST_CASE("bytes that are not UTF-8 are found behind a long stretch of ASCII") {
    std::string const text = std::string(5000, 'a') + "\xC3(";
    std::size_t bad = 0;
    CHECK_FALSE(is_utf8(text, &bad));
    CHECK(bad == 5000);
}
