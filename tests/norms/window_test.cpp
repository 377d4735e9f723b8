// SPDX-License-Identifier: MIT
#include "norms/window.h"

#include "norms/published.h"
#include "testing.h"

using namespace asterism::norms;
using std::chrono::hours;

namespace {

NormDescription norm_for(std::vector<Window> windows) {
    NormDescription norm;
    norm.norm = "test";
    norm.windows = std::move(windows);
    return norm;
}

Query baby(std::optional<DayRange> gestation, std::optional<hours> age) {
    Query query;
    query.gestation = gestation;
    query.age = age;
    return query;
}

Why why(NormDescription const& norm, Query const& query) {
    auto const window = admitting_window(norm, query);
    REQUIRE_FALSE(window);
    return window.error().why;
}

std::string reason(NormDescription const& norm, Query const& query) {
    auto const window = admitting_window(norm, query);
    return window ? "" : window.error().reason;
}

Window const at_birth{DayRange{231, 300}, {}, hours{72}};

}  // namespace

TEST_CASE("a norm without a window is for everybody") {
    CHECK(admitting_window(norm_for({}), baby({}, {})));
}

TEST_CASE("both ends of a window are inside it") {
    auto const norm = norm_for({at_birth});
    CHECK(admitting_window(norm, baby(gestation(33, 0), hours{0})));
    CHECK(admitting_window(norm, baby(gestation(42, 6), hours{72})));
    CHECK(why(norm, baby(gestation(32, 6), hours{0})) == Why::gestation_outside);
    CHECK(why(norm, baby(gestation(43, 0), hours{0})) == Why::gestation_outside);
    CHECK(why(norm, baby(gestation(33, 0), hours{73})) == Why::age_outside);
}

TEST_CASE("a band of gestation must lie wholly inside") {
    auto const norm = norm_for({at_birth});
    CHECK(admitting_window(norm, baby(completed_weeks(33), {})));
    CHECK(why(norm, baby(DayRange{229, 235}, {})) == Why::gestation_outside);
    CHECK(reason(norm, baby(DayRange{229, 235}, {})) ==
          "for babies born at 33w0d to 42w6d; this one may be outside: 32w5d to 33w4d");
}

TEST_CASE("an age that is not given counts as birth, and only as birth") {
    CHECK(admitting_window(norm_for({at_birth}), baby(gestation(40, 0), {})));
    auto const later = norm_for({{{}, hours{73}, {}}});
    CHECK(why(later, baby(gestation(40, 0), {})) == Why::age_unknown);
}

TEST_CASE("a gestation that is not given is a reason of its own") {
    CHECK(why(norm_for({at_birth}), baby({}, hours{1})) == Why::gestation_unknown);
    CHECK(admitting_window(norm_for({{{}, {}, hours{72}}}), baby({}, hours{1})));
}

TEST_CASE("the reason says what the norm is for and what this baby is") {
    auto const norm = norm_for({at_birth});
    CHECK(reason(norm, baby(gestation(24, 1), hours{3})) ==
          "for babies born at 33w0d to 42w6d; this one is 24w1d");
    CHECK(reason(norm, baby(gestation(40, 0), hours{14 * 24})) ==
          "for babies aged up to 72 hours; this one is 14 days old");
    CHECK(reason(norm, baby({}, hours{1})) ==
          "for babies born at 33w0d to 42w6d; the gestation is not given");
    auto const who = norm_for({{{}, hours{73}, hours{182 * 24}}});
    CHECK(reason(who, baby(gestation(40, 0), hours{26})) ==
          "for babies aged 73 hours to 182 days; this one is 26 hours old");
    CHECK(reason(norm_for({{{}, hours{24}, {}}}), baby({}, hours{2})) ==
          "for babies aged from 24 hours; this one is 2 hours old");
}

TEST_CASE("the first admitting window counts") {
    auto const norm = norm_for({{{}, {}, hours{72}, true}, {{}, {}, {}, false}});
    CHECK(admitting_window(norm, baby({}, hours{10}))->beside);
    CHECK_FALSE(admitting_window(norm, baby({}, hours{100}))->beside);
}

TEST_CASE("with several windows the reason is that of the one for this age") {
    auto const norm = norm_for({{DayRange{154, 321}, {}, hours{72}, true},
                                {DayRange{154, 258}, hours{73}, hours{4704}, false}});
    auto const term_later = baby(gestation(40, 0), hours{200});
    CHECK(why(norm, term_later) == Why::gestation_outside);
    CHECK(reason(norm, term_later) == "for babies born at 22w0d to 36w6d; this one is 40w0d");
    CHECK(why(norm, baby(gestation(30, 0), hours{5000})) == Why::age_outside);
}
