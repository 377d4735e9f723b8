// SPDX-License-Identifier: MIT
#include "review/mutant_killer.h"

#include <algorithm>
#include <functional>
#include <sstream>

#include <fmt/format.h>

#include "assess/evidence.h"
#include "assess/verdicts.h"
#include "cases/read_case.h"
#include "review/mutant_miter.h"
#include "review/prove_case.h"
#include "review/rehearse.h"

namespace asterism {

namespace {

/// Models that make no case, or that the engine answers alike, before the search is given up.
constexpr int most_tries = 40;

/// Everything that the book says of a baby and that a vignette can expect.
class Expectation {
public:
    Expectation(CompiledRulebook const& book, Case const& baby)
        : book_(book),
          facts_(evaluate(book, baby, Rest::unknown)),
          verdicts_(verdicts(book, facts_.values)) {
        vignette_.baby = baby;
        for (ServiceId id = 0; id < verdicts_.size(); ++id) referral(id);
        for (auto const& tally : book.tallies)
            vignette_.tallies.push_back(
                {{tally.id, {}}, static_cast<double>(sum(tally.inputs, facts_.counted).low) / 10});
        for (auto const& one : book.constellations)
            vignette_.constellations.push_back(
                {{book.syntax(one).id.text, {}}, value_of(one.reached.literal, facts_.values)});
    }

    /// Also whether a finding is there, and what the book calls it.
    void add_class(std::string const& name) {
        auto const id = book_.ontology->finding(name);
        if (!id || !book_.class_of(*id)) return;
        auto const there = value_of(book_.present[*id], facts_.values);
        auto const value = there == Truth::yes ? book_.class_of(*id) : std::nullopt;
        vignette_.classes.push_back({*id, {name, {}}, there, value});
    }

    Vignette const& vignette() const { return vignette_; }

private:
    void referral(ServiceId id) {
        auto const& found = verdicts_[id];
        ExpectedReferral expected{
            {book_.book->services[id].id.text, {}}, found.verdict, found.urgency, {}};
        if (found.verdict == Verdict::suggested) {
            auto rules = deciding_rules(book_, facts_.values, id);
            if (rules.empty()) rules = deciding_rules(book_, facts_.counted, id);
            expected.by.emplace();
            for (auto const rule : rules)
                expected.by->push_back({book_.syntax(book_.rules[rule]).id.text, {}});
        }
        vignette_.referrals.push_back(std::move(expected));
    }

    CompiledRulebook const& book_;
    CaseFacts facts_;
    std::vector<ServiceVerdict> verdicts_;
    Vignette vignette_;
};

Expectation expectation(CompiledRulebook const& book, Case const& baby, Mutant const& edit) {
    Expectation result(book, baby);
    // Of a finding that is derived, whether it is there shows as its class.
    result.add_class(edit.part);
    return result;
}

/// Leaves only what a reader needs: every referral that is not "not suggested", both counts, and
/// whatever else the mutant says otherwise.
Vignette shortened(Vignette all, CompiledRulebook const& mutant) {
    auto const noticed = [&](Vignette const& only) { return !judge(mutant, only).empty(); };
    std::erase_if(all.referrals, [&](ExpectedReferral const& one) {
        if (one.verdict != Verdict::not_suggested) return false;
        Vignette only;
        only.baby = all.baby;
        only.referrals = {one};
        auto const problems = judge(mutant, only);
        return std::none_of(problems.begin(), problems.end(), [&](VignetteFailure const& failure) {
            return failure.message.find(one.service.text + " is") != std::string::npos;
        });
    });
    auto const alone = [&](auto member, auto const& one) {
        Vignette only;
        only.baby = all.baby;
        only.referrals = all.referrals;
        auto const before = judge(mutant, only).size();
        only.*member = {one};
        return judge(mutant, only).size() > before;
    };
    std::erase_if(all.tallies, [&](auto const& one) {
        bool const count =
            one.tally.text == "minor-variants" || one.tally.text == "major-anomalies";
        return !count && !alone(&Vignette::tallies, one);
    });
    std::erase_if(all.constellations,
                  [&](auto const& one) { return !alone(&Vignette::constellations, one); });
    return noticed(all) ? all : Vignette{};
}

std::string_view words(Truth truth) {
    return truth == Truth::yes ? "reached" : truth == Truth::no ? "missed" : "open";
}

std::string_view class_word(ExpectedClass const& one) {
    if (one.value) return to_text(*one.value);
    return one.present == Truth::no ? "not-present" : "open";
}

std::string referral_yaml(ExpectedReferral const& one) {
    if (one.verdict != Verdict::suggested)
        return fmt::format("        {}: {}\n", one.service.text, to_text(one.verdict));
    std::vector<std::string> rules;
    for (auto const& rule : *one.by) rules.push_back(rule.text);
    return fmt::format("        {}: {{ verdict: suggested, urgency: {}, by: [{}] }}\n",
                       one.service.text, to_text(*one.urgency), fmt::join(rules, ", "));
}

std::string expect_yaml(Vignette const& vignette) {
    std::string text;
    std::vector<std::string> parts;
    if (!vignette.referrals.empty()) text += "      referrals:\n";
    for (auto const& one : vignette.referrals) text += referral_yaml(one);
    for (auto const& one : vignette.tallies)
        parts.push_back(fmt::format("{}: {}", one.tally.text, one.value));
    if (!parts.empty()) text += fmt::format("      tallies: {{ {} }}\n", fmt::join(parts, ", "));
    parts.clear();
    for (auto const& one : vignette.constellations)
        parts.push_back(fmt::format("{}: {}", one.constellation.text, words(one.reached)));
    if (!parts.empty())
        text += fmt::format("      constellations: {{ {} }}\n", fmt::join(parts, ", "));
    parts.clear();
    for (auto const& one : vignette.classes)
        parts.push_back(fmt::format("{}: {}", one.name.text, class_word(one)));
    if (!parts.empty()) text += fmt::format("      classes: {{ {} }}\n", fmt::join(parts, ", "));
    return text.empty() ? "      referrals: {}\n" : text;
}

std::string case_lines(Case const& baby, Ontology const& ontology) {
    std::istringstream lines(case_yaml(baby, ontology));
    bool const all =
        std::find(baby.step_done.begin(), baby.step_done.end(), false) == baby.step_done.end();
    std::string text, line;
    std::getline(lines, line);  // the case's name
    while (std::getline(lines, line))
        text += "      " + (all && line.starts_with("examined:") ? "examined: all" : line) + "\n";
    return text.empty() ? "      {}\n" : text;
}

class Killer {
public:
    Killer(CompiledRulebook const& book, CompiledRulebook const& mutant, Mutant const& edit,
           sat::Limits const& limits)
        : book_(book), mutant_(mutant), edit_(edit), limits_(limits), joined_(book, mutant) {}

    KillerSearch run() {
        if (edit_.kind == MutantKind::class_moved) try_present();
        if (!found_.vignette.empty()) return std::move(found_);
        auto const what = joined_.difference();
        if (what.empty())
            no_model("both books make one and the same circuit", 0);
        else
            search(what);
        return std::move(found_);
    }

private:
    void try_present() {
        Case baby;
        auto const id = book_.ontology->finding(edit_.part);
        if (!id) return;
        baby.step_done.assign(book_.ontology->steps.size(), true);
        Statement statement;
        statement.finding = *id;
        statement.as_written.text = edit_.part;
        baby.present.push_back(statement);
        if (differs(baby)) offer(baby);
    }

    bool differs(Case const& baby) const {
        auto const expected = expectation(book_, baby, edit_);
        return judge(book_, expected.vignette()).empty() &&
               !judge(mutant_, expected.vignette()).empty();
    }

    /// Only what still differs after being written and read again is offered.
    bool differs_in_writing(Case const& baby) const {
        Diagnostics diagnostics;
        auto const text = case_yaml(baby, *book_.ontology);
        auto const read = read_case(make_source("vignette", text), *book_.ontology, diagnostics);
        return !diagnostics.has_errors() && differs(read);
    }

    void search(JoinedBooks::Difference const& what) {
        sat::Solver solver;
        sat::Babies const babies(solver, {&book_, &mutant_});
        solver.add_clause({joined_.differ(solver, babies, what)});
        int unwritten = 0;
        for (int tries = 0; tries < most_tries; ++tries) {
            auto const answer = solver.solve({}, limits_);
            if (answer == sat::Answer::undecided)
                return give_up("undecided within the solver's limit");
            if (answer == sat::Answer::unsatisfiable)
                return tries == 0 ? no_model_with_counts_open()
                       : unwritten == tries
                           ? give_up("no values were found for the measures it needs")
                           : give_up("every baby found was answered alike");
            std::vector<sat::Lit> blocked;
            auto const baby = babies.realise(blocked);
            if (baby && differs_in_writing(*baby)) return offer(*baby);
            if (!baby)
                ++unwritten;
            else
                blocked = this_model(solver, babies);
            solver.add_clause(blocked);
        }
        give_up(fmt::format("{} babies tried, none answered otherwise", most_tries));
    }

    static std::vector<sat::Lit> this_model(sat::Solver const& solver, sat::Babies const& babies) {
        std::vector<sat::Lit> clause;
        for (auto const& [key, truth] : babies.facts()) {
            clause.push_back(solver.value(truth.yes) ? -truth.yes : truth.yes);
            clause.push_back(solver.value(truth.possible) ? -truth.possible : truth.possible);
        }
        return clause;
    }

    /// What holds for single nodes must hold too where the engine holds an open count either way.
    void no_model_with_counts_open() {
        sat::Solver solver;
        sat::Babies const babies(solver, {&book_, &mutant_});
        JoinedBooks const cut(joined_, joined_.split_nodes());
        solver.add_clause({cut.differ_when_cut(solver, babies, cut.difference())});
        auto const answer = solver.solve({}, limits_);
        if (answer != sat::Answer::unsatisfiable)
            return give_up("alike by single rules; not proven where a count is left open");
        no_model("a solver found no baby whom both answer differently", solver.clauses());
    }

    void no_model(std::string_view how, std::size_t clauses) {
        if (!joined_.same_splits()) return give_up("other counts are left open than before");
        if (!joined_.same_measures()) return give_up("another measure decides a finding");
        if (edit_.kind == MutantKind::class_moved || edit_.kind == MutantKind::service)
            return give_up("alike in every verdict, yet another word is shown");
        found_.none_exists = true;
        found_.method = fmt::format(
            "{}{}; the same verdicts, urgencies, deciding rules, counts, patterns and "
            "classes for every baby a case can describe, within {} conflicts",
            how, clauses ? fmt::format(" ({} clauses)", clauses) : "", limits_.conflicts);
    }

    void give_up(std::string why) { found_.method = std::move(why); }

    /// A fully examined baby when one will do: it reads best.
    void offer(Case const& baby) {
        auto const done = [](Case const& one) {
            return std::find(one.step_done.begin(), one.step_done.end(), false) ==
                   one.step_done.end();
        };
        auto full = baby;
        full.step_done.assign(book_.ontology->steps.size(), true);
        full.unsure.clear();
        bool const as_full = differs_in_writing(full);
        auto const small = smallest(as_full ? full : baby, [&](Case const& one) {
            return (!as_full || done(one)) && differs_in_writing(one);
        });
        write(small);
    }

    void write(Case const& baby) {
        auto const expected = shortened(expectation(book_, baby, edit_).vignette(), mutant_);
        found_.vignette = fmt::format(
            "  - vignette: notices-{}\n"
            "    story: \"Write here who this baby is ({}, {}).\"\n"
            "    generated: true\n"
            "    case:\n{}"
            "    expect:\n{}"
            "    sources: []\n",
            edit_.part, edit_.place.place(), edit_.what, case_lines(baby, *book_.ontology),
            expect_yaml(expected));
    }

    CompiledRulebook const& book_;
    CompiledRulebook const& mutant_;
    Mutant const& edit_;
    sat::Limits limits_;
    JoinedBooks joined_;
    KillerSearch found_;
};

}  // namespace

KillerSearch find_killer(CompiledRulebook const& book, CompiledRulebook const& mutant,
                         Mutant const& edit, sat::Limits const& limits) {
    return Killer(book, mutant, edit, limits).run();
}

}  // namespace asterism
