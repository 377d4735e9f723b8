// SPDX-License-Identifier: MIT
// All rows of worked-examples.csv in the folder of facts, each within the tolerance it states.
#include <cmath>

#include "../norms/facts.h"
#include "../norms/published.h"
#include "norms/cells.h"
#include "norms/normal.h"
#include "testing.h"

using namespace asterism::norms;

namespace {

constexpr std::size_t rows_expected = 216;

/// Cells of one worked example by column name.
class WorkedExample {
public:
    WorkedExample(Cells& cells, Row const& row) : cells_(cells), row_(row) {}

    std::string const& text(std::string_view column) const { return cells_.text(row_, column); }
    double number(std::string_view column) const { return cells_.number(row_, column); }
    Place place(std::string_view measure) const {
        return {measure, cells_.sex(row_, "sex"), cells_.whole(row_, "age_days")};
    }
    std::string measure() const { return cells_.measure(row_, "measurement"); }
    bool is_of(std::string_view standard) const { return text("standard").starts_with(standard); }
    Lms lms() const { return {number("L"), number("M"), number("S")}; }

private:
    Cells& cells_;
    Row const& row_;
};

struct Functions {
    std::function<double(double)> z;
    std::function<double(double)> value;
};

Functions on_scale(WorkedExample const& example, char const* norm, std::string_view measure) {
    auto const* found = published::size_standards().find(norm);
    REQUIRE(found != nullptr);
    auto const* scale = &*found->scale;
    auto const place = example.place(measure);
    return {[=](double y) { return z_at(*scale, place, y).value(); },
            [=](double z) { return value_at(*scale, place, z).value(); }};
}

Functions of_lms(Lms lms, bool tail) {
    return {[=](double y) { return tail ? *lms_z_with_who_tail(y, lms) : *lms_z(y, lms); },
            [=](double z) { return *lms_value(z, lms); }};
}

/// INTERGROWTH is looked up in the shipped tables; the others bring their own L, M and S.
Functions functions_for(WorkedExample const& example, std::string_view measure) {
    if (example.is_of("INTERGROWTH-21st newborn")) {
        return on_scale(example, "intergrowth-newborn", measure);
    }
    if (example.is_of("INTERGROWTH-21st very preterm")) {
        return on_scale(example, "intergrowth-very-preterm", measure);
    }
    return of_lms(example.lms(), example.is_of("WHO") && measure == "weight");
}

double recomputed(WorkedExample const& example) {
    auto const measure = example.measure();
    auto const functions = functions_for(example, measure);
    auto const& direction = example.text("direction");
    if (direction == "table_row_M") return functions.value(0);
    auto const input = example.number("input");
    if (direction == "value_to_z") return functions.z(input);
    if (direction == "value_to_probability") return normal_tails(functions.z(input)).lower;
    if (direction == "z_to_value") return functions.value(input);
    REQUIRE(direction == "probability_to_value");
    return functions.value(z_of_centile(100 * input));
}

}  // namespace

TEST_CASE("every worked example is reproduced within its tolerance") {
    auto const path = facts("norms/worked-examples.csv");
    if (!path) return;
    auto const table = parse_table(published::read_text(path->string()));
    REQUIRE(table);
    Cells cells(*table, {"id", "standard", "direction", "measurement", "sex", "age_days", "L", "M",
                         "S", "input", "expected", "tolerance"});
    REQUIRE(cells.complete());
    CHECK(table->rows.size() == rows_expected);
    std::size_t reproduced = 0;
    for (auto const& row : table->rows) {
        WorkedExample const example(cells, row);
        INFO(example.text("id"));
        constexpr double rounding = 1e-12;
        auto const difference = std::abs(recomputed(example) - example.number("expected"));
        auto const within = difference <= example.number("tolerance") + rounding;
        CHECK(within);
        reproduced += within ? 1 : 0;
    }
    MESSAGE("worked examples reproduced: ", reproduced, " of ", table->rows.size());
}

TEST_CASE("where the shipped tables have a row, it is the one of the worked example") {
    auto const path = facts("norms/worked-examples.csv");
    if (!path) return;
    auto const table = parse_table(published::read_text(path->string()));
    REQUIRE(table);
    Cells cells(*table, {"id", "standard", "measurement", "sex", "age_days", "L", "M", "S"});
    REQUIRE(cells.complete());
    int compared = 0;
    for (auto const& row : table->rows) {
        WorkedExample const example(cells, row);
        auto const measure = example.measure();
        auto const place = example.place(measure);
        auto const is_olsen = example.is_of("Olsen");
        if (!is_olsen && !example.is_of("WHO")) continue;
        auto const* lms = is_olsen
                              ? published::olsen_table().find(measure, place.sex, place.key / 7)
                              : published::who_table().find(measure, place.sex, place.key);
        if (lms == nullptr) continue;  // WHO ages beyond day 182
        INFO(example.text("id"));
        CHECK(lms->l == example.lms().l);
        CHECK(lms->m == example.lms().m);
        CHECK(lms->s == example.lms().s);
        ++compared;
    }
    CHECK(compared >= 55);
}
