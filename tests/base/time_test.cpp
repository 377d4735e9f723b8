// SPDX-License-Identifier: MIT
/// Gestation, spans of time and dates as they are written in notes.
#include "base/time.h"

#include <string>

#include "testing.h"

using namespace asterism;

namespace {

struct Weeks {
    char const* text;
    int min_days;
    int max_days;
};

struct Hours {
    char const* text;
    int hours;
};

Date day(int year, unsigned month, unsigned of_month) {
    return {std::chrono::year(year), std::chrono::month(month), std::chrono::day(of_month)};
}

bool says(std::string const& message, std::string const& part) {
    return message.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("gestation in weeks and days is exact") {
    for (auto const* text : {"38w4d", "38+4", "38 + 4", "38 weeks 4 days", "38w 4d", " 38w4d ",
                             "38 w 4 d", "38wk4d", "38weeks4days"}) {
        CAPTURE(std::string(text));
        auto const gestation = parse_gestation(text);
        REQUIRE(gestation);
        CHECK(*gestation == Gestation{270, 270});
        CHECK(gestation->exact());
    }
}

TEST_CASE("weeks alone are a band of seven days") {
    for (auto const* text : {"38w", "38 weeks", "38 wk", "38week"}) {
        CAPTURE(std::string(text));
        auto const gestation = parse_gestation(text);
        REQUIRE(gestation);
        CHECK(*gestation == Gestation{266, 272});
        CHECK_FALSE(gestation->exact());
    }
}

TEST_CASE("the range of gestation includes both ends") {
    for (Weeks const& row :
         {Weeks{"20w0d", 140, 140}, Weeks{"20w", 140, 146}, Weeks{"45w6d", 321, 321},
          Weeks{"45w", 315, 321}, Weeks{"40+0", 280, 280}, Weeks{"39+6", 279, 279}}) {
        CAPTURE(std::string(row.text));
        auto const gestation = parse_gestation(row.text);
        REQUIRE(gestation);
        CHECK(*gestation == Gestation{row.min_days, row.max_days});
    }
    for (auto const* text : {"19w6d", "19w", "46w0d", "46w", "60w", "0w0d", "2w"}) {
        CAPTURE(std::string(text));
        auto const gestation = parse_gestation(text);
        REQUIRE_FALSE(gestation);
        CHECK(says(gestation.error(), "20w0d to 45w6d"));
    }
}

TEST_CASE("decimal weeks are refused because they are ambiguous") {
    for (auto const* text : {"38.4", "38.4w", "38.4 weeks", "37.3"}) {
        CAPTURE(std::string(text));
        auto const gestation = parse_gestation(text);
        REQUIRE_FALSE(gestation);
        CHECK(says(gestation.error(), "ambiguous"));
    }
}

TEST_CASE("a week has seven days") {
    CHECK(parse_gestation("38w6d"));
    for (auto const* text : {"38w7d", "38+7", "38w10d"}) {
        CAPTURE(std::string(text));
        auto const gestation = parse_gestation(text);
        REQUIRE_FALSE(gestation);
        CHECK(says(gestation.error(), "0 to 6"));
    }
}

TEST_CASE("what is no gestation is refused") {
    for (auto const* text :
         {"", " ", "38", "term", "4d", "38w4", "38d4w", "38w4d3h", "w", "38+", "+4", "38++4",
          "38w+4d", "-38w", "38w-4d", "38w4.5d", "270d", "99999999999w", "38 months"}) {
        CAPTURE(std::string(text));
        CHECK_FALSE(parse_gestation(text));
    }
}

TEST_CASE("every gestation in range reads back from its print") {
    for (int days = 140; days <= 321; ++days) {
        Gestation const exact{days, days};
        CHECK(parse_gestation(to_text(exact)) == exact);
    }
    CHECK(to_text(Gestation{270, 270}) == "38w4d");
    CHECK(to_text(Gestation{266, 272}) == "38w");
}

TEST_CASE("spans of time") {
    for (Hours const& row : {
             Hours{"0h", 0},
             Hours{"26h", 26},
             Hours{"26 hours", 26},
             Hours{"1 hr", 1},
             Hours{"3d", 72},
             Hours{"3 days", 72},
             Hours{"2w", 336},
             Hours{"1d 6h", 30},
             Hours{"1d6h", 30},
             Hours{"1w 1d 1h", 193},
             Hours{"6m", 4383},  // 6 x 30.4375 x 24
             Hours{"2 months", 1461},
             Hours{"1y", 8766},  // 12 of these months
             Hours{"12m", 8766},
             Hours{" 3d ", 72},
         }) {
        CAPTURE(std::string(row.text));
        auto const duration = parse_duration(row.text);
        REQUIRE(duration);
        CHECK(duration->hours == row.hours);
    }
}

TEST_CASE("what is no span of time is refused") {
    for (auto const* text : {"", " ", "26", "h", "1.5d", "-3d", "3x", "3 d 4", "d3", "1d,6h",
                             "three days", "999999999y", "99999999999h", "0x3d", "1e3h"}) {
        CAPTURE(std::string(text));
        CHECK_FALSE(parse_duration(text));
    }
}

TEST_CASE("spans print in the largest unit that is exact") {
    CHECK(to_text(Duration{0}) == "0h");
    CHECK(to_text(Duration{26}) == "26h");
    CHECK(to_text(Duration{24}) == "24h");
    CHECK(to_text(Duration{48}) == "2d");
    CHECK(to_text(Duration{72}) == "3d");
    CHECK(to_text(Duration{168}) == "7d");
    CHECK(to_text(Duration{336}) == "2w");
    CHECK(to_text(Duration{337}) == "337h");
    for (int hours = 0; hours < 800; ++hours)
        CHECK(parse_duration(to_text(Duration{hours})) == Duration{hours});
}

TEST_CASE("spans are ordered") {
    CHECK(*parse_duration("1d") < *parse_duration("25h"));
    CHECK(*parse_duration("7d") == *parse_duration("1w"));
}

TEST_CASE("dates of the calendar") {
    CHECK(parse_date("2031-04-02") == day(2031, 4, 2));
    CHECK(parse_date("2032-02-29") == day(2032, 2, 29));
    CHECK(parse_date("2000-02-29") == day(2000, 2, 29));
    CHECK(parse_date("2031-12-31") == day(2031, 12, 31));
}

TEST_CASE("days that the calendar lacks are refused as such") {
    for (auto const* text :
         {"2031-02-29", "2100-02-29", "2031-04-31", "2031-13-01", "2031-06-32"}) {
        CAPTURE(std::string(text));
        auto const date = parse_date(text);
        REQUIRE_FALSE(date);
        CHECK(says(date.error(), "calendar"));
    }
}

TEST_CASE("what is no date is refused") {
    for (auto const* text : {"", "2031-4-2", "31-04-02", "02-04-2031", "2031/04/02", "2031-00-02",
                             "2031-04-00", "2031-04-02T10", " 2031-04-02", "2031-.4-02",
                             "-031-04-02", "2031--4-02", "0031-04-02", "yesterday", "20310402"}) {
        CAPTURE(std::string(text));
        CHECK_FALSE(parse_date(text));
    }
}

TEST_CASE("a date prints as it is written") {
    for (auto const* text : {"2031-04-02", "1999-12-31", "2032-02-29"})
        CHECK(to_text(*parse_date(text)) == text);
}

TEST_CASE("whole days are added over the ends of months and years") {
    CHECK(to_text(add(day(2031, 4, 2), Duration{0})) == "2031-04-02");
    CHECK(to_text(add(day(2031, 4, 30), Duration{24})) == "2031-05-01");
    CHECK(to_text(add(day(2031, 12, 31), Duration{24})) == "2032-01-01");
    CHECK(to_text(add(day(2032, 2, 28), Duration{24})) == "2032-02-29");
    CHECK(to_text(add(day(2031, 2, 28), Duration{24})) == "2031-03-01");
    CHECK(to_text(add(day(2031, 4, 2), Duration{6 * 7 * 24})) == "2031-05-14");
    CHECK(to_text(add(day(2031, 4, 2), Duration{47})) == "2031-04-03");
}
