// SPDX-License-Identifier: MIT
/// The shipped tables, read from ontology/norms, and the size standards as norms.yaml describes
/// them.
#pragma once

#include <doctest/doctest.h>

#include <fstream>
#include <iterator>
#include <string>

#include "norms/parameter_table.h"
#include "norms/standard.h"

namespace asterism::norms::published {

/// All bytes of a file; the test case fails when it cannot be read. Paths start at the project
/// root.
inline std::string read_text(std::string const& path) {
    std::ifstream in(path, std::ios::binary);
    REQUIRE_MESSAGE(in.is_open(), "cannot open ", path);
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

inline std::string table_text(std::string const& name) {
    return read_text("ontology/norms/" + name);
}

inline SkewTTable const& newborn_table() {
    static auto const table = read_skew_t_table(table_text("intergrowth-newborn.csv")).value();
    return table;
}

inline std::vector<VeryPreterm> const& very_preterm_equations() {
    static auto const rows =
        read_very_preterm_table(table_text("intergrowth-very-preterm.csv")).value();
    return rows;
}

inline LmsTable const& who_table() {
    static auto const table = read_lms_table(table_text("who-2006.csv"), "age_days").value();
    return table;
}

inline LmsTable const& olsen_table() {
    static auto const table =
        read_lms_table(table_text("olsen-2010.csv"), "ga_completed_weeks").value();
    return table;
}

inline VeryPreterm const& equation(std::string const& measure) {
    for (auto const& row : very_preterm_equations()) {
        if (row.measure == measure) return row;
    }
    FAIL("no equation for ", measure);
    return very_preterm_equations().front();
}

/// The INTERGROWTH-21st parameters of one day; the test case fails when there are none.
inline SkewT newborn(std::string const& measure, Sex sex, int day) {
    auto const* row = newborn_table().find(measure, sex, day);
    REQUIRE(row != nullptr);
    return *row;
}

inline NormDescription size_norm(std::string id, Kind kind, std::string table, Clock clock,
                                 std::vector<Window> windows) {
    NormDescription norm;
    norm.norm = std::move(id);
    norm.measures = {"head-circumference", "length", "weight"};
    norm.kind = kind;
    norm.table = std::move(table);
    norm.clock = clock;
    norm.windows = std::move(windows);
    return norm;
}

/// The five size norms in the order of norms.yaml, with their windows, tails and cautions.
inline std::vector<NormDescription> size_descriptions() {
    using std::chrono::hours;
    constexpr hours birth_ends{72};
    auto newborn_norm = size_norm("intergrowth-newborn", Kind::skew_t, "intergrowth-newborn.csv",
                                  Clock::gestation_day, {{DayRange{231, 300}, {}, birth_ends}});
    newborn_norm.cautions = {{Sex::female, {231, 231}, "extrapolated row"},
                             {{}, {231, 237}, "near the joint"}};
    auto preterm =
        size_norm("intergrowth-very-preterm", Kind::very_preterm, "intergrowth-very-preterm.csv",
                  Clock::gestation_day, {{DayRange{168, 230}, {}, birth_ends}});
    preterm.cautions = {{{}, {224, 230}, "near the joint"}};
    auto who = size_norm("who-2006", Kind::lms, "who-2006.csv", Clock::age_day,
                         {{DayRange{259, 321}, hours{73}, hours{182 * 24}}});
    who.who_tail = {"weight"};
    auto fenton = size_norm("fenton-2013", Kind::lms, "fenton-2013.csv", Clock::post_menstrual_day,
                            {{DayRange{154, 321}, {}, birth_ends, true},
                             {DayRange{154, 258}, hours{73}, hours{196 * 24}}});
    fenton.bundled = false;
    auto olsen = size_norm("olsen-2010", Kind::lms, "olsen-2010.csv", Clock::gestation_week,
                           {{DayRange{161, 293}, {}, birth_ends, true}});
    return {newborn_norm, preterm, who, fenton, olsen};
}

inline TableTexts shipped_tables() {
    TableTexts texts;
    for (auto const* name : {"intergrowth-newborn.csv", "intergrowth-very-preterm.csv",
                             "who-2006.csv", "olsen-2010.csv"}) {
        texts[name] = table_text(name);
    }
    return texts;
}

/// The size standards without Fenton, as they are shipped.
inline Standards const& size_standards() {
    static auto const standards = Standards::build(size_descriptions(), shipped_tables()).value();
    return standards;
}

}  // namespace asterism::norms::published
