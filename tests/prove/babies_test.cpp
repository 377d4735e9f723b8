// SPDX-License-Identifier: MIT
// The clauses about babies must admit every case that can be written (or a proof would say nothing
// of it), and every model must be a case that the engine reads back with the same facts.
#include "review/sat/babies.h"

#include "assess/facts.h"
#include "oracle/case_text.h"
#include "oracle/faulty_book.h"
#include "oracle/random_cases.h"
#include "oracle/small_world.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::sat;

namespace {

void force(TruthVars vars, Truth truth, std::vector<Lit>& assumptions) {
    assumptions.push_back(truth == Truth::yes ? vars.yes : -vars.yes);
    assumptions.push_back(truth == Truth::no ? -vars.possible : vars.possible);
}

bool of_other_sex(Case const& baby, Ontology const& ontology) {
    auto const mismatch = [&](Statement const& s) {
        auto const sex = ontology.at(s.finding).sex;
        return sex != Sex::not_given && (baby.sex == Sex::female || baby.sex == Sex::male) &&
               sex != baby.sex;
    };
    return std::any_of(baby.present.begin(), baby.present.end(), mismatch) ||
           std::any_of(baby.unsure.begin(), baby.unsure.end(), mismatch);
}

struct World {
    explicit World(CompiledRulebook const& of) : book(of), babies(solver, {&of}) {}

    /// Whether a case's facts satisfy the clauses.
    bool admits(Case const& baby) {
        auto const facts = evaluate(book, baby, Rest::unknown);
        std::vector<Lit> assumptions;
        for (auto const& fact : book.facts)
            force(babies.fact(key_of(book, fact)), facts.values[fact.node], assumptions);
        return solver.solve(assumptions, {}) == Answer::satisfiable;
    }

    CompiledRulebook const& book;
    Solver solver;
    Babies babies;
};

}  // namespace

TEST_CASE("every random case of the shipped book is a model") {
    auto const& subject = oracle::shipped_book();
    World world(subject.compiled);
    oracle::CaseMaker maker(subject, oracle::seed_from_environment());
    int tried = 0;
    for (std::size_t i = 0; i < oracle::cases_from_environment(400); ++i) {
        auto const baby = maker.make();
        if (of_other_sex(baby, *subject.ontology)) continue;
        ++tried;
        INFO(oracle::case_text(baby, *subject.ontology));
        CHECK(world.admits(baby));
    }
    CHECK(tried > 100);
}

TEST_CASE("every case of a small world is a model") {
    auto const& subject = oracle::book_to_plant_faults_in();
    World world(subject.compiled);
    std::vector<std::vector<std::string>> const worlds{
        {"ear", "low-ear", "steps"},  {"crease", "deep-crease", "steps"},    {"chin", "steps"},
        {"foreskin", "sex", "steps"}, {"dimple", "width", "depth", "steps"}, {"breech", "steps"},
        {"gestation", "age", "sex"}};
    int tried = 0;
    for (auto const& axes : worlds) {
        oracle::for_each_small_case(axes, [&](Case const& baby) {
            if (of_other_sex(baby, *subject.ontology)) return;
            ++tried;
            INFO(oracle::case_text(baby, *subject.ontology));
            CHECK(world.admits(baby));
        });
    }
    CHECK(tried > 200);
}

namespace {

/// Asks for a model with a few facts set at random; its case must give the engine every fact of the
/// model.
void models_are_cases(oracle::Subject const& subject, int rounds) {
    oracle::Dice dice(oracle::seed_from_environment());
    auto const& book = subject.compiled;
    World world(book);
    int read_back = 0;
    for (int round = 0; round < rounds; ++round) {
        std::vector<Lit> wanted;
        for (int i = 0; i < 4; ++i) {
            auto const truth = world.babies.fact(key_of(book, dice.one_of(book.facts)));
            auto const before = wanted;
            force(truth, static_cast<Truth>(dice.below(3)), wanted);
            if (world.solver.solve(wanted, {}) != Answer::satisfiable) wanted = before;
        }
        if (dice.in_100(50))
            wanted.push_back(world.babies.step_done(
                static_cast<StepId>(dice.below(subject.ontology->steps.size()))));
        if (world.solver.solve(wanted, {}) != Answer::satisfiable) continue;
        std::vector<Lit> blocked;
        auto const baby = world.babies.realise(blocked);
        if (!baby) {
            CHECK_FALSE(blocked.empty());
            continue;
        }
        ++read_back;
        auto const facts = evaluate(book, *baby, Rest::unknown);
        INFO(oracle::case_text(*baby, *subject.ontology));
        for (auto const& fact : book.facts) {
            auto const key = key_of(book, fact);
            CAPTURE(static_cast<int>(key.kind));
            CAPTURE(key.index);
            CHECK(facts.values[fact.node] == value_of(world.babies.fact(key), world.solver));
        }
    }
    CHECK(read_back > rounds / 4);
}

}  // namespace

TEST_CASE("a model is a case that the engine reads back with the same facts") {
    models_are_cases(oracle::book_to_plant_faults_in(), 400);
    models_are_cases(oracle::shipped_book(), 200);
}
