// SPDX-License-Identifier: MIT
// What the solver calls equivalent, against the engine itself: babies made at random of the
// findings that the edited part names, each present, absent, unsure or not said, some steps done.
#include <map>
#include <random>

#include "assess/evidence.h"
#include "assess/facts.h"
#include "assess/verdicts.h"
#include "compile/recompile.h"
#include "review/mutant_trial.h"
#include "support/real_book.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

constexpr int babies_each = 400;

/// Everything that a vignette can state of a baby, in one text.
std::string answer(CompiledRulebook const& book, Case const& baby) {
    auto const facts = evaluate(book, baby, Rest::unknown);
    auto const all = verdicts(book, facts.values);
    std::string text;
    for (ServiceId service = 0; service < all.size(); ++service) {
        text += std::string(to_text(all[service].verdict)) + " ";
        if (all[service].urgency) text += to_text(*all[service].urgency);
        for (auto const rule : deciding_rules(book, facts.values, service))
            text += " " + std::to_string(rule);
        text += "\n";
    }
    for (auto const& one : book.constellations)
        text += std::to_string(static_cast<int>(value_of(one.reached.literal, facts.values)));
    for (auto const& one : book.tallies)
        text += " " + std::to_string(sum(one.inputs, facts.counted).low);
    for (FindingId id = 0; id < book.present.size(); ++id)
        if (book.class_of(id))
            text += std::to_string(static_cast<int>(value_of(book.present[id], facts.values)));
    return text;
}

Statement statement(CompiledRulebook const& book, FindingId id) {
    Statement result;
    result.finding = id;
    result.as_written.text = book.ontology->at(id).id.text;
    return result;
}

class RandomBabies {
public:
    RandomBabies(CompiledRulebook const& book, std::vector<std::string> const& words)
        : book_(book) {
        for (auto const& word : words)
            if (auto const id = book.ontology->finding(word)) findings_.push_back(*id);
        std::sort(findings_.begin(), findings_.end());
        findings_.erase(std::unique(findings_.begin(), findings_.end()), findings_.end());
    }

    Case next() {
        Case baby;
        baby.step_done.assign(book_.ontology->steps.size(), false);
        bool const all = random_() % 2 == 0;
        for (auto done : baby.step_done) done = all || random_() % 4 == 0;
        for (auto const id : findings_) {
            switch (random_() % 6) {
                case 0:
                case 1: baby.present.push_back(statement(book_, id)); break;
                case 2: baby.unsure.push_back(statement(book_, id)); break;
                case 3: absent(baby, id); break;
                default: break;
            }
        }
        return baby;
    }

private:
    /// Only what has no other of these findings below it: nothing then contradicts itself.
    void absent(Case& baby, FindingId id) {
        auto const below = book_.ontology->descendants(id);
        bool const last = std::none_of(findings_.begin(), findings_.end(), [&](FindingId other) {
            return std::find(below.begin(), below.end(), other) != below.end();
        });
        if (last) baby.absent.push_back(statement(book_, id));
    }

    CompiledRulebook const& book_;
    std::vector<FindingId> findings_;
    std::mt19937 random_{17};
};

CompiledRulebook edited(Mutant const& mutant) {
    auto const& book = real_book();
    auto copy = std::make_shared<Rulebook>(without_vignettes(*book.book));
    mutant.apply(*copy);
    Diagnostics diagnostics;
    auto compiled = recompile(copy, book.ontology, book.standards, diagnostics);
    REQUIRE(compiled);
    return std::move(*compiled);
}

/// The proven ones among the edits of this part.
std::vector<TriedMutant> proven(std::string const& part) {
    TrialOptions options;
    options.part = part;
    std::vector<TriedMutant> result;
    for (auto const& one : try_mutants(real_book(), {}, options).tried)
        if (one.fate == MutantFate::equivalent) result.push_back(one);
    return result;
}

}  // namespace

TEST_CASE("no random baby contradicts what the solver proved of the shipped book") {
    auto const& book = real_book();
    int differing_answers = 0;
    for (auto const* part : {"trisomy-18-pattern", "skeletal-dysplasia-pattern",
                             "congenital-zika-signs", "saturation-screen-to-repeat"}) {
        CAPTURE(part);
        auto const found = proven(part);
        CHECK_FALSE(found.empty());
        for (auto const& one : found) {
            auto const mutant = edited(one.mutant);
            RandomBabies babies(book, one.mutant.words);
            std::map<std::string, int> answers;
            for (int i = 0; i < babies_each; ++i) {
                auto const baby = babies.next();
                auto const before = answer(book, baby);
                ++answers[before];
                CHECK(before == answer(mutant, baby));
            }
            differing_answers += static_cast<int>(answers.size());
        }
    }
    // The babies are not all one and the same.
    CHECK(differing_answers > 50);
}

TEST_CASE("the random babies do tell an edit that matters") {
    auto const& book = real_book();
    int items = 0;
    for (auto const& one : mutants(book)) {
        if (one.part != "trisomy-18-pattern" || one.what != "item left out") continue;
        ++items;
        CAPTURE(one.place.place());
        auto const mutant = edited(one);
        RandomBabies babies(book, one.words);
        int differing = 0;
        for (int i = 0; i < babies_each; ++i) {
            auto const baby = babies.next();
            differing += answer(book, baby) != answer(mutant, baby);
        }
        CHECK(differing > 0);
    }
    CHECK(items == 11);
}
