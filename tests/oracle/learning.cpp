// SPDX-License-Identifier: MIT
#include "oracle/learning.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "cases/contradictions.h"

namespace asterism::oracle {

namespace {

using Learn = bool (*)(Subject const&, Case&, Dice&);

bool remove_unsure(Case& baby, FindingId id) {
    return std::erase_if(baby.unsure, [&](Statement const& s) { return s.finding == id; }) > 0;
}

bool is_told(Subject const& subject, FindingId id) {
    return subject.ontology->findings[id].history;
}

Statement about(Subject const& subject, FindingId id, Dice& dice) {
    auto const& finding = subject.ontology->findings[id];
    Statement statement;
    statement.finding = id;
    statement.as_written = finding.id;
    if (finding.laterality == Laterality::paired && dice.in_100(50))
        statement.sides = dice.one_of<Sides>({Sides::left, Sides::right, Sides::both});
    return statement;
}

/// An unknown finding: one that somebody was unsure of, or any other.
bool learn_finding(Subject const& subject, Case& baby, Dice& dice) {
    auto const states = evaluate(subject.compiled, baby, Rest::unknown).states;
    auto id = static_cast<FindingId>(dice.below(states.size()));
    if (!baby.unsure.empty() && dice.in_100(50)) id = dice.one_of(baby.unsure).finding;
    if (states[id].own != Truth::unknown || is_told(subject, id)) return false;
    auto const one_sided = [&](Statement const& s) { return s.finding == id; };
    if (std::any_of(baby.absent.begin(), baby.absent.end(), one_sided)) return false;
    remove_unsure(baby, id);
    auto statement = about(subject, id, dice);
    bool const present = dice.in_100(50);
    auto const grades = subject.ontology->findings[id].grades.size();
    if (present && grades > 0 && dice.in_100(50))
        statement.grade = static_cast<std::uint32_t>(dice.below(grades));
    (present ? baby.present : baby.absent).push_back(statement);
    return true;
}

bool learn_detail(Subject const& subject, Case& baby, Dice& dice) {
    if (baby.present.empty()) return false;
    auto& statement = baby.present[dice.below(baby.present.size())];
    auto const& finding = subject.ontology->findings[statement.finding];
    if (!finding.grades.empty() && !statement.grade) {
        statement.grade = static_cast<std::uint32_t>(dice.below(finding.grades.size()));
        return true;
    }
    if (finding.laterality != Laterality::paired || statement.sides != Sides::not_said)
        return false;
    statement.sides = dice.one_of<Sides>({Sides::left, Sides::right, Sides::both});
    return true;
}

bool learn_step(Subject const&, Case& baby, Dice& dice) {
    auto const step = dice.below(baby.step_done.size());
    if (baby.step_done[step]) return false;
    baby.step_done[step] = true;
    return true;
}

bool learn_sex(Subject const&, Case& baby, Dice& dice) {
    if (baby.sex == Sex::female || baby.sex == Sex::male) return false;
    baby.sex = dice.in_100(50) ? Sex::female : Sex::male;
    return true;
}

bool learn_age(Subject const&, Case& baby, Dice& dice) {
    if (baby.age) return false;
    baby.age = Duration{static_cast<int>(dice.below(800))};
    return true;
}

/// A week where nothing was known, a day of the week where only the week was.
bool learn_gestation(Subject const&, Case& baby, Dice& dice) {
    if (baby.gestation && baby.gestation->exact()) return false;
    if (!baby.gestation) {
        auto const week = static_cast<int>(24 + dice.below(19)) * 7;
        baby.gestation = Gestation{week, week + 6};
    } else {
        auto const day = baby.gestation->min_days + static_cast<int>(dice.below(7));
        baby.gestation = Gestation{day, day};
    }
    return true;
}

bool learn_measure(Subject const& subject, Case& baby, Dice& dice) {
    auto const& measures = subject.ontology->measures;
    auto const id = static_cast<MeasureId>(dice.below(measures.size()));
    auto const same = [&](MeasuredValue const& m) { return m.measure == id; };
    if (!measures[id].instrument) return false;
    if (std::any_of(baby.measures.begin(), baby.measures.end(), same)) return false;
    MeasuredValue taken;
    taken.measure = id;
    taken.as_written = measures[id].id;
    auto const& [from, to] = measures[id].plausible;
    taken.value = from + (to - from) * static_cast<double>(dice.below(101)) / 100;
    baby.measures.push_back(taken);
    return true;
}

void differ(std::vector<std::string>& lines, std::string_view what, Truth before, Truth after) {
    if (before != Truth::unknown && before != after)
        lines.push_back(fmt::format("{}: {} before, {} after", what, asterism::to_text(before),
                                    asterism::to_text(after)));
}

bool flipped(ServiceAnswer const& before, ServiceAnswer const& after) {
    if (before.verdict == "unsettled") return false;
    if (before.verdict != after.verdict) return true;
    if (before.verdict == "not-suggested") return false;
    auto const most = before.may_rise_to ? *before.may_rise_to : *before.urgency;
    return *after.urgency < *before.urgency || *after.urgency > most;
}

}  // namespace

std::optional<Case> learn_one_thing(Subject const& subject, Case const& baby, Dice& dice) {
    static constexpr std::array<Learn, 9> ways{learn_finding, learn_finding,   learn_finding,
                                               learn_detail,  learn_step,      learn_sex,
                                               learn_age,     learn_gestation, learn_measure};
    Case more = baby;
    if (!ways[dice.below(ways.size())](subject, more, dice)) return std::nullopt;
    Diagnostics diagnostics;
    check_contradictions(more, *subject.ontology, diagnostics);
    return diagnostics.has_errors() ? std::nullopt : std::optional(std::move(more));
}

bool amends_by_measure(Subject const& subject, CaseFacts const& before, CaseFacts const& after) {
    auto const& book = subject.compiled;
    for (FindingId id = 0; id < book.derived.size(); ++id) {
        if (!book.derived[id]) continue;
        for (auto const index : book.derived[id]->tests) {
            auto const was = value_of(book.measure_tests[index], before.readings);
            auto const is = value_of(book.measure_tests[index], after.readings);
            if (was == is) continue;
            bool const by_eye = before.states[id].own == Truth::no;
            bool const unsafe_side =
                book.class_of(id) == FindingClass::red_flag && was == Truth::unknown;
            if (by_eye || unsafe_side) return true;
        }
    }
    return false;
}

std::vector<std::string> flips(Subject const& subject, Answer const& before, Answer const& after) {
    std::vector<std::string> lines;
    auto const& book = *subject.book;
    for (std::size_t i = 0; i < before.services.size(); ++i) {
        if (flipped(before.services[i], after.services[i]))
            lines.push_back(fmt::format("{}: {} before, {} after", book.services[i].id.text,
                                        to_text(before.services[i]), to_text(after.services[i])));
    }
    for (std::size_t i = 0; i < before.present.size(); ++i)
        differ(lines, subject.ontology->findings[i].id.text, before.present[i], after.present[i]);
    for (std::size_t i = 0; i < before.constellations.size(); ++i)
        differ(lines, book.constellations[i].id.text, before.constellations[i],
               after.constellations[i]);
    auto const tallies = tally_names(book);
    for (std::size_t i = 0; i < tallies.size(); ++i) {
        auto const& bounds = before.tallies[i];
        auto const& now = after.tallies[i];
        if (now.low < bounds.low || now.high > bounds.high)
            lines.push_back(fmt::format("tally {}: {} to {} tenths before, {} to {} after",
                                        tallies[i], bounds.low, bounds.high, now.low, now.high));
    }
    return lines;
}

}  // namespace asterism::oracle
