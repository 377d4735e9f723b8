// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "assess/assess.h"
#include "measures/measuring.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

enum class Screen { pass, repeat, fail };

struct Row {
    int hand;
    int foot;
    Screen by_2025;
    Screen by_2011;
};

/// Oster ME et al. Pediatrics 2025;155:e2024069667; Kemper AR et al. Pediatrics 2011;128:e1259.
/// The pairs of the coding table, and the limits themselves.
constexpr Row rows[] = {
    {95, 95, Screen::pass, Screen::pass},     {98, 95, Screen::pass, Screen::pass},
    {95, 98, Screen::pass, Screen::pass},     {99, 95, Screen::repeat, Screen::repeat},
    {96, 94, Screen::repeat, Screen::pass},   {94, 97, Screen::repeat, Screen::pass},
    {94, 94, Screen::repeat, Screen::repeat}, {90, 90, Screen::repeat, Screen::repeat},
    {90, 95, Screen::repeat, Screen::repeat}, {89, 97, Screen::fail, Screen::fail},
    {97, 89, Screen::fail, Screen::fail},     {89, 89, Screen::fail, Screen::fail},
};

Assessment judged(Row const& row) {
    auto const text = fmt::format(
        "age: 26h\nmeasures: {{ pre-ductal-saturation: {} %, post-ductal-saturation: {} % }}\n",
        row.hand, row.foot);
    Diagnostics diagnostics;
    auto const baby =
        read_case(make_source("case.yaml", text), *shipped_book().ontology, diagnostics);
    REQUIRE_FALSE(diagnostics.has_errors());
    return assess(shipped_book(), baby);
}

bool present(Assessment const& assessment, std::string const& finding) {
    for (auto const& evidence : assessment.findings) {
        if (evidence.id == finding) return evidence.state == "present";
    }
    return false;
}

Screen read(Assessment const& assessment, std::string const& repeat) {
    if (present(assessment, "failed-saturation-screen")) return Screen::fail;
    return present(assessment, repeat) ? Screen::repeat : Screen::pass;
}

}  // namespace

TEST_CASE("the saturation screen of 2025, in force, and that of 2011 beside it") {
    for (auto const& row : rows) {
        CAPTURE(row.hand);
        CAPTURE(row.foot);
        auto const assessment = judged(row);
        CHECK(read(assessment, "saturation-screen-to-repeat") == row.by_2025);
        CHECK(read(assessment, "saturation-screen-to-repeat-2011") == row.by_2011);
        CHECK(present(assessment, "low-saturation") == (row.by_2025 == Screen::fail));
    }
}

TEST_CASE("every whole pair: a pass by 2025 is a pass by 2011, and both fail together") {
    for (int hand = 86; hand <= 100; ++hand) {
        for (int foot = 86; foot <= 100; ++foot) {
            bool const fails = hand < 90 || foot < 90;
            bool const near = std::abs(hand - foot) <= 3;
            bool const pass_2025 = hand >= 95 && foot >= 95 && near;
            bool const pass_2011 = (hand >= 95 || foot >= 95) && near;
            auto const assessment = judged({hand, foot, Screen::pass, Screen::pass});
            auto const wanted = [&](bool pass) {
                return fails ? Screen::fail : pass ? Screen::pass : Screen::repeat;
            };
            CAPTURE(hand);
            CAPTURE(foot);
            CHECK(read(assessment, "saturation-screen-to-repeat") == wanted(pass_2025));
            CHECK(read(assessment, "saturation-screen-to-repeat-2011") == wanted(pass_2011));
        }
    }
}

TEST_CASE("one limb alone never passes the screen") {
    Diagnostics diagnostics;
    auto const baby =
        read_case(make_source("case.yaml", "measures: { pre-ductal-saturation: 99 % }\n"),
                  *shipped_book().ontology, diagnostics);
    auto const assessment = assess(shipped_book(), baby);
    for (auto const& evidence : assessment.findings)
        CHECK(evidence.id != "saturation-screen-to-repeat");
    for (auto const& referral : assessment.referrals) {
        if (referral.service == "cardiology") CHECK(referral.verdict == Verdict::unsettled);
    }
}
