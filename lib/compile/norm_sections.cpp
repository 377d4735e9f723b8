// SPDX-License-Identifier: MIT
#include "compile/norm_sections.h"

#include "base/time.h"

namespace asterism {

namespace {

using norms::NormDescription;
using yaml::choice;
using yaml::list_of;
using yaml::maybe;
using yaml::number;
using yaml::one_or_more;
using yaml::Table;
using yaml::text;
using yaml::word;

/// A reader that reads one form and turns it into another; `turn` reports what it cannot use.
template <class T, class Syntax, class Turn>
yaml::Reader<T> turned(yaml::Reader<Syntax> inner, Turn turn) {
    return {inner.shape,
            [inner, turn](yaml::Node const& node, T& target, Diagnostics& diagnostics) {
                Syntax syntax{};
                Diagnostics problems;
                inner.read(node, syntax, problems);
                if (!problems.has_errors()) turn(node, syntax, target, problems);
                diagnostics.append(problems);
            }};
}

struct FromTo {
    Word from;
    Word to;
};

Table<FromTo> from_to_table(std::string what) {
    Table<FromTo> table(std::move(what));
    table.optional("from", &FromTo::from, word(), "the first, included")
        .optional("to", &FromTo::to, word(), "the last, included");
    return table;
}

/// One whole day of gestation; weeks alone would leave six days open.
int gestation_day(Word const& word, yaml::Node const& node, Diagnostics& diagnostics) {
    if (word.empty()) {
        diagnostics.error("missing-key", node.span, "a range of gestation needs `from` and `to`");
        return 0;
    }
    auto const parsed = parse_gestation(word.text);
    if (parsed && parsed->exact()) return parsed->min_days;
    diagnostics.error("bad-gestation", word.span,
                      "expected weeks and days such as `37w0d`, found `" + word.text + "`");
    return 0;
}

yaml::Reader<norms::DayRange> gestation_range() {
    auto both = from_to_table("range of gestation").reader();
    for (auto& field : both.shape.fields) field.required = true;
    return turned<norms::DayRange>(
        std::move(both), [](yaml::Node const& node, FromTo const& range, norms::DayRange& target,
                            Diagnostics& diagnostics) {
            target = {gestation_day(range.from, node, diagnostics),
                      gestation_day(range.to, node, diagnostics)};
        });
}

std::optional<std::chrono::hours> age(Word const& word, Diagnostics& diagnostics) {
    if (word.empty()) return std::nullopt;
    auto const parsed = parse_duration(word.text);
    if (parsed) return std::chrono::hours(parsed->hours);
    diagnostics.error("bad-duration", word.span,
                      "`" + word.text + "` is not understood: " + parsed.error());
    return std::nullopt;
}

struct WindowSyntax {
    std::optional<norms::DayRange> gestation;
    FromTo age;
    bool beside = false;
};

yaml::Reader<norms::Window> window() {
    Table<WindowSyntax> table("window of a norm");
    table
        .optional("gestation", &WindowSyntax::gestation, maybe(gestation_range()),
                  "gestation at birth")
        .optional("age", &WindowSyntax::age, from_to_table("range of age").reader(),
                  "age when measured")
        .optional("beside", &WindowSyntax::beside, yaml::boolean(),
                  "shown beside the others, never the preferred one");
    return turned<norms::Window>(
        table.reader(), [](yaml::Node const&, WindowSyntax const& syntax, norms::Window& target,
                           Diagnostics& diagnostics) {
            target.gestation = syntax.gestation;
            target.age_from = age(syntax.age.from, diagnostics);
            target.age_to = age(syntax.age.to, diagnostics);
            target.beside = syntax.beside;
        });
}

struct CutOffSyntax {
    std::optional<double> below, above, at_most, at_least;
    std::string means;
};

void turn_cut_off(yaml::Node const& node, CutOffSyntax const& syntax, norms::CutOff& target,
                  Diagnostics& diagnostics) {
    int given = 0;
    auto const take = [&](std::optional<double> const& limit, norms::Relation relation) {
        if (!limit) return;
        target.relation = relation;
        target.limit = *limit;
        ++given;
    };
    take(syntax.below, norms::Relation::below);
    take(syntax.above, norms::Relation::above);
    take(syntax.at_most, norms::Relation::at_most);
    take(syntax.at_least, norms::Relation::at_least);
    target.means = syntax.means;
    if (given == 1) return;
    diagnostics.error("one-bound", node.span,
                      "a cut-off needs exactly one of `below`, `above`, `at-most`, `at-least`");
}

yaml::Reader<norms::CutOff> cut_off() {
    Table<CutOffSyntax> table("cut-off");
    table.optional("below", &CutOffSyntax::below, maybe(number()), "beyond it: smaller values")
        .optional("above", &CutOffSyntax::above, maybe(number()), "beyond it: larger values")
        .optional("at-most", &CutOffSyntax::at_most, maybe(number()), "the limit counts too")
        .optional("at-least", &CutOffSyntax::at_least, maybe(number()), "the limit counts too")
        .required("means", &CutOffSyntax::means, text(), "what is said of a value beyond it");
    return turned<norms::CutOff>(table.reader(), turn_cut_off);
}

yaml::Reader<norms::PrintedCentile> printed_centile() {
    using norms::PrintedCentile;
    Table<PrintedCentile> table("printed centile");
    table.required("p", &PrintedCentile::centile, number(), "percent of the babies below")
        .required("at", &PrintedCentile::value, number(), "value, in the unit of the norm");
    return table.reader();
}

yaml::Reader<std::optional<norms::Sex>> sex() {
    return maybe(choice<norms::Sex>({{"female", norms::Sex::female}, {"male", norms::Sex::male}}));
}

yaml::Reader<norms::Caution> caution() {
    using norms::Caution;
    Table<Caution> table("caution");
    table.optional("sex", &Caution::sex, sex(), "only for this sex")
        .required("gestation", &Caution::gestation, gestation_range(), "gestation at birth")
        .required("text", &Caution::text, text(), "what has to be known");
    return table.reader();
}

yaml::Reader<norms::Kind> kind() {
    using norms::Kind;
    return choice<Kind>({{"lms", Kind::lms},
                         {"skew-t", Kind::skew_t},
                         {"very-preterm", Kind::very_preterm},
                         {"mean-sd", Kind::mean_sd},
                         {"centiles", Kind::centiles},
                         {"cutoff", Kind::cut_off}});
}

yaml::Reader<norms::Clock> clock() {
    using norms::Clock;
    return choice<Clock>({{"gestation-day", Clock::gestation_day},
                          {"gestation-week", Clock::gestation_week},
                          {"age-day", Clock::age_day},
                          {"post-menstrual-day", Clock::post_menstrual_day}});
}

yaml::Reader<norms::Evidence> evidence() {
    using norms::Evidence;
    return choice<Evidence>({{"full text", Evidence::full_text},
                             {"abstract", Evidence::abstract},
                             {"secondary", Evidence::secondary},
                             {"memory", Evidence::memory}});
}

/// A field of the description seen as a field of the syntax that extends it.
template <class M>
M NormSyntax::*of(M NormDescription::*member) {
    return member;
}

void add_numbers(Table<NormSyntax>& table) {
    using D = NormDescription;
    table.optional("table", of(&D::table), text(), "name of its table, a .csv file")
        .optional("bundled", of(&D::bundled), yaml::boolean(), "false: the user supplies the table")
        .optional("by", of(&D::clock), clock(), "by what its rows are looked up")
        .optional("who-tail", of(&D::who_tail), list_of(text()), "measures with the WHO tail rule")
        .optional("unit", of(&D::unit), text(), "unit, for norms without a table")
        .optional("mean", of(&D::mean), maybe(number()), "mean")
        .optional("per-week", of(&D::mean_per_week), number(), "rise of the mean per exact week")
        .optional("sd", of(&D::sd), maybe(number()), "standard deviation")
        .optional("centiles", of(&D::centiles), list_of(printed_centile()), "printed centiles")
        .optional("cut-offs", of(&D::cut_offs), list_of(cut_off()), "published limits");
}

Table<NormSyntax> make_table() {
    using D = NormDescription;
    Table<NormSyntax> table("norm");
    table.required("norm", &NormSyntax::id, word(), "id")
        .required("measure", &NormSyntax::measure_names, one_or_more(word("measure")),
                  "the measure or measures")
        .required("kind", of(&D::kind), kind(), "what it consists of")
        .required("population", of(&D::population), text(), "who was measured")
        .required("sources", &NormSyntax::source_names, one_or_more(word("source")),
                  "where the numbers are from")
        .required("evidence", of(&D::evidence), evidence(), "how the numbers were seen")
        .optional("label", of(&D::label), text(), "name in print; default the id")
        .optional("sex", of(&D::sex), sex(), "for a trait of one sex")
        .optional("applies", of(&D::windows), one_or_more(window()), "for which babies")
        .optional("note", of(&D::note), text(), "why this one, and what contradicts it")
        .optional("cautions", of(&D::cautions), list_of(caution()), "warnings for parts of it");
    add_numbers(table);
    return table;
}

}  // namespace

yaml::Table<NormSyntax> const& norm_table() {
    static Table<NormSyntax> const table = make_table();
    return table;
}

}  // namespace asterism
