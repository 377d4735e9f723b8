// SPDX-License-Identifier: MIT
// What would change the answer, on random small books and babies, against brute force: every subset
// of findings, every addition and every set of steps is tried by judging a rewritten case.
#include <algorithm>
#include <bit>
#include <map>
#include <random>
#include <set>

#include "assess/changes.h"
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

using Names = std::set<std::string>;
using Sets = std::set<Names>;
using Random = std::mt19937;

constexpr int books = 250;
constexpr int babies_per_book = 48;

int below(Random& random, int limit) {
    return std::uniform_int_distribution<int>(0, limit - 1)(random);
}

std::string any_of(Random& random, std::vector<std::string> const& words) {
    return words[static_cast<std::size_t>(below(random, static_cast<int>(words.size())))];
}

std::vector<std::string> const findings{"slant",  "fold",  "lens",   "cloudy", "opaque",
                                        "crease", "digit", "nubbin", "testis"};
std::vector<std::string> const exam_steps{"look", "reflex", "palm"};

std::string condition(Random& random, int depth) {
    switch (below(random, depth > 0 ? 9 : 6)) {
        case 0:
        case 1:
        case 2: return "{ present: " + any_of(random, findings) + " }";
        case 3: return "{ absent: " + any_of(random, findings) + " }";
        case 4: return "{ tally: minors, at-least: " + std::to_string(1 + below(random, 3)) + " }";
        case 5: return "{ tally: majors, at-least: " + std::to_string(1 + below(random, 2)) + " }";
        case 6: return "{ sex: female }";
        default: break;
    }
    auto const kind = any_of(random, {"all", "any", "none"});
    return "{ " + kind + ": [" + condition(random, depth - 1) + ", " +
           condition(random, depth - 1) + "] }";
}

CompiledRulebook random_book(Random& random) {
    std::string rules;
    for (int i = 0; i < 3; ++i)
        rules += rule("r" + std::to_string(i), condition(random, 2),
                      any_of(random, {"genetics", "ophthalmology"}), "routine");
    return small_book(rules);
}

Statement statement(CompiledRulebook const& book, std::string const& id) {
    Statement made;
    made.finding = book.ontology->finding_by_id.at(id);
    made.as_written.text = id;
    return made;
}

std::string id_of(CompiledRulebook const& book, Statement const& said) {
    return book.ontology->at(said.finding).id.text;
}

Case random_baby(Random& random, CompiledRulebook const& book, bool all_examined) {
    Case baby;
    baby.history_none = true;
    baby.sex = below(random, 2) == 0 ? Sex::female : Sex::male;
    baby.step_done.assign(book.ontology->steps.size(), all_examined);
    if (!all_examined)
        for (StepId step = 0; step < baby.step_done.size(); ++step)
            baby.step_done[step] = below(random, 2) == 0;
    for (auto const& id : findings) {
        if (id == "testis" && baby.sex == Sex::female) continue;
        // Where steps are open, a parent that is taken away cannot be written as a case.
        bool const parent = id == "lens" || id == "cloudy";
        if (below(random, 3) != 0 || (parent && !all_examined)) continue;
        auto said = statement(book, id);
        said.familial = below(random, 6) == 0 && id != "testis";
        baby.present.push_back(said);
    }
    return baby;
}

bool suggests(CompiledRulebook const& book, Case const& baby, std::string const& service) {
    return verdict(assess(book, baby), service) == "suggested";
}

WhatWouldChange change_of(CompiledRulebook const& book, Case const& baby,
                          std::string const& service) {
    auto answer = assess(book, baby);
    add_what_would_change(book, baby, answer);
    return referral(answer, service).what_would_change;
}

Sets named(std::vector<std::vector<Change>> const& sets) {
    Sets result;
    for (auto const& set : sets) {
        Names names;
        for (auto const& change : set) names.insert(change.id);
        result.insert(names);
    }
    return result;
}

/// The baby without these findings: looked for, and not there.
Case without(CompiledRulebook const& book, Case baby, Names const& names, bool all_examined) {
    for (auto const& said : baby.present)
        if (names.contains(id_of(book, said)) && !all_examined) {
            auto absent = said;
            absent.familial = false;
            baby.absent.push_back(absent);
        }
    std::erase_if(baby.present,
                  [&](Statement const& said) { return names.contains(id_of(book, said)); });
    return baby;
}

std::string words(Names const& names) {
    std::string text;
    for (auto const& name : names) text += (text.empty() ? "" : "+") + name;
    return text;
}

std::string words(Sets const& sets) {
    std::string text;
    for (auto const& set : sets) text += (text.empty() ? "" : " or ") + words(set);
    return text;
}

/// What a failing comparison prints: the baby, and the rules it was judged by.
std::string words(CompiledRulebook const& book, Case const& baby) {
    std::string text = baby.sex == Sex::female ? "female" : "male";
    for (auto const& said : baby.present)
        text += ", " + id_of(book, said) + (said.familial ? " (familial)" : "");
    for (StepId step = 0; step < baby.step_done.size(); ++step)
        if (baby.step_done[step]) text += ", step " + book.ontology->steps[step].id.text;
    for (auto const& rule : book.rules)
        text += "; " + book.syntax(rule).id.text + ": " +
                rule.when->condition->describe(book.vocabulary());
    return text;
}

bool holds_one_of(Names const& set, Sets const& smaller) {
    return std::any_of(smaller.begin(), smaller.end(), [&](Names const& part) {
        return std::includes(set.begin(), set.end(), part.begin(), part.end());
    });
}

/// Every minimal set of stated findings without which the suggestion falls, smallest first.
Sets falls_without(CompiledRulebook const& book, Case const& baby, std::string const& service,
                   bool all_examined) {
    std::vector<unsigned> masks(1u << baby.present.size());
    for (unsigned mask = 0; mask < masks.size(); ++mask) masks[mask] = mask;
    std::stable_sort(masks.begin(), masks.end(),
                     [](unsigned a, unsigned b) { return std::popcount(a) < std::popcount(b); });
    Sets found;
    for (auto const mask : masks) {
        Names names;
        for (std::size_t i = 0; i < baby.present.size(); ++i)
            if (mask >> i & 1u) names.insert(id_of(book, baby.present[i]));
        if (names.empty() || holds_one_of(names, found)) continue;
        if (!suggests(book, without(book, baby, names, all_examined), service)) found.insert(names);
    }
    return found;
}

/// Present by statement, or through a more specific finding.
bool present(CompiledRulebook const& book, Case const& baby, std::string const& id) {
    static std::map<std::string, Names> const below_it{{"lens", {"cloudy", "opaque"}},
                                                       {"cloudy", {"opaque"}}};
    auto const specific = below_it.find(id);
    return std::any_of(baby.present.begin(), baby.present.end(), [&](Statement const& said) {
        auto const name = id_of(book, said);
        return name == id || (specific != below_it.end() && specific->second.contains(name));
    });
}

Case with(CompiledRulebook const& book, Case baby, Names const& names) {
    for (auto const& name : names) baby.present.push_back(statement(book, name));
    return baby;
}

bool suggests_alone(CompiledRulebook const& book, Case const& baby, std::string const& id,
                    std::string const& service) {
    auto only = baby;
    only.present.clear();
    return suggests(book, with(book, only, {id}), service);
}

struct Added {
    Sets with;
    int alone = 0;
};

/// The findings, or failing those the pairs of findings, that complete a verdict when added.
Added additions(CompiledRulebook const& book, Case const& baby, std::string const& service) {
    Added added;
    Names rest;
    for (auto const& id : {"slant", "fold", "lens", "cloudy", "opaque", "crease", "digit", "nubbin",
                           "testis", "hole"}) {
        if (present(book, baby, id)) continue;
        if (std::string(id) == "testis" && baby.sex == Sex::female) continue;
        if (!suggests(book, with(book, baby, {id}), service))
            rest.insert(id);
        else if (suggests_alone(book, baby, id, service))
            ++added.alone;
        else
            added.with.insert({id});
    }
    if (!added.with.empty()) return added;
    for (auto const& one : rest)
        for (auto const& other : rest)
            if (one < other && suggests(book, with(book, baby, {one, other}), service))
                added.with.insert({one, other});
    return added;
}

Case after_steps(Case baby, unsigned mask, std::vector<StepId> const& open) {
    for (std::size_t i = 0; i < open.size(); ++i)
        if (mask >> i & 1u) baby.step_done[open[i]] = true;
    return baby;
}

/// The least number of open exam steps that, found normal, settle the verdict; nothing when none
/// do.
std::optional<int> fewest_steps(CompiledRulebook const& book, Case const& baby,
                                std::string const& service) {
    std::vector<StepId> open;
    for (auto const& step : exam_steps) {
        auto const id = book.ontology->step_by_id.at(step);
        if (!baby.step_done[id]) open.push_back(id);
    }
    std::optional<int> fewest;
    for (unsigned mask = 0; mask < 1u << open.size(); ++mask) {
        int const size = std::popcount(mask);
        if (fewest && size >= *fewest) continue;
        if (verdict(assess(book, after_steps(baby, mask, open)), service) != "unsettled")
            fewest = size;
    }
    return fewest;
}

/// How often each kind of answer was compared.
struct Compared {
    int without = 0, with = 0, examine = 0;
};

void compare_examine(CompiledRulebook const& book, Case const& baby, std::string const& service,
                     WhatWouldChange const& change) {
    auto const fewest = fewest_steps(book, baby, service);
    CHECK(fewest.value_or(0) == static_cast<int>(change.examine.size()));
    auto done = baby;
    for (auto const& step : change.examine)
        done.step_done[book.ontology->step_by_id.at(step.step)] = true;
    if (fewest) CHECK(verdict(assess(book, done), service) != "unsettled");
}

void compare(CompiledRulebook const& book, Case const& baby, std::string const& service,
             bool all_examined, Compared& compared) {
    auto const change = change_of(book, baby, service);
    auto const now = verdict(assess(book, baby), service);
    if (now == "suggested") {
        ++compared.without;
        auto const expected = falls_without(book, baby, service, all_examined);
        auto const found = named(change.without);
        CAPTURE(words(found));
        CAPTURE(words(expected));
        if (!change.more_without) CHECK(found == expected);
        for (auto const& set : found) CHECK(expected.contains(set));
    } else if (now == "not-suggested") {
        ++compared.with;
        auto const expected = additions(book, baby, service);
        CHECK_FALSE(change.more_with);
        CHECK(named(change.with) == expected.with);
        CHECK(change.alone == expected.alone);
    } else {
        ++compared.examine;
        compare_examine(book, baby, service, change);
    }
}

}  // namespace

TEST_CASE("what would change the answer agrees with brute force on random books and babies") {
    Random random(20310402);
    Compared compared;
    for (int i = 0; i < books; ++i) {
        auto const book = random_book(random);
        for (int k = 0; k < babies_per_book; ++k) {
            bool const all_examined = k % 2 == 0;
            auto const baby = random_baby(random, book, all_examined);
            for (auto const* service : {"genetics", "ophthalmology"}) {
                CAPTURE(i);
                CAPTURE(k);
                CAPTURE(words(book, baby));
                compare(book, baby, service, all_examined, compared);
            }
        }
    }
    MESSAGE("compared: without ", compared.without, ", with ", compared.with, ", examine ",
            compared.examine);
    CHECK(compared.without + compared.with + compared.examine == books * babies_per_book * 2);
    CHECK(compared.without > 1000);
    CHECK(compared.with > 1000);
    CHECK(compared.examine > 1000);
}
