// SPDX-License-Identifier: MIT
// The promises of the shipped book: all hold, a second solver agrees, and broken rules break them.
#include <cstdlib>
#include <set>

#include <z3++.h>

#include "review/prove.h"
#include "review/prove_question.h"
#include "support/real_book.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

Promises const& shipped() {
    static Promises const promises = [] {
        Diagnostics diagnostics;
        auto result = compile_promises(real_book(), diagnostics);
        for (auto const& d : diagnostics.sorted()) MESSAGE(d.span.place(), ": ", d.message);
        REQUIRE(result);
        return std::move(*result);
    }();
    return promises;
}

/// The question's own clauses, put to Z3 (version of Debian 12).
z3::check_result judged_by_z3(Promises const& promises, CompiledPromise const& promise) {
    std::vector<std::vector<sat::Lit>> clauses;
    sat::Solver solver(&clauses);
    PromiseQuestion const question(solver, promises, promise);
    z3::context context;
    z3::solver z3(context, "QF_FD");
    std::vector<z3::expr> variables;
    auto const literal = [&](sat::Lit lit) {
        auto const at = static_cast<std::size_t>(std::abs(lit));
        while (variables.size() <= at) {
            variables.push_back(
                context.bool_const(("v" + std::to_string(variables.size())).c_str()));
        }
        return lit > 0 ? variables[at] : !variables[at];
    };
    for (auto const& clause : clauses) {
        z3::expr_vector parts(context);
        for (auto const lit : clause) parts.push_back(literal(lit));
        z3.add(z3::mk_or(parts));
    }
    return z3.check();
}

}  // namespace

TEST_CASE("the book makes at least forty promises, each with a reason, and every one holds") {
    auto const& promises = shipped();
    CHECK(promises.all.size() >= 40);
    for (auto const& promise : promises.all) {
        auto const& syntax = promises.syntax(promise);
        CAPTURE(syntax.id.text);
        CHECK(syntax.because.size() > 10);
        CHECK_FALSE(syntax.sources.empty());
        auto const proof = prove(promises, promise, {});
        CHECK_MESSAGE(proof.result == ProofResult::holds, proof.case_text, proof.said,
                      proof.why_not);
    }
}

TEST_CASE("Z3 finds no baby either, for any promise") {
    for (auto const& promise : shipped().all) {
        CAPTURE(shipped().syntax(promise).id.text);
        CHECK(judged_by_z3(shipped(), promise) == z3::unsat);
    }
}

namespace {

/// The shipped book with one text in one file changed; the text must be there.
CompiledRulebook changed_book(std::string const& file, std::string const& from,
                              std::string const& to) {
    std::vector<SourcePtr> files;
    bool changed = false;
    for (auto const& source : project_files("rules/newborn")) {
        auto text = std::string(source->text());
        auto const at = source->name() == file ? text.find(from) : std::string::npos;
        if (at != std::string::npos) text.replace(at, from.size(), to), changed = true;
        files.push_back(make_source(source->name(), text));
    }
    REQUIRE(changed);
    Diagnostics diagnostics;
    auto book = load_rulebook(files, diagnostics);
    REQUIRE(book);
    auto compiled = compile(std::make_shared<Rulebook const>(std::move(*book)),
                            real_book().ontology, diagnostics);
    REQUIRE(compiled);
    return std::move(*compiled);
}

std::set<std::string> broken(CompiledRulebook const& book) {
    Diagnostics diagnostics;
    auto const promises = compile_promises(book, diagnostics);
    REQUIRE(promises);
    std::set<std::string> result;
    for (auto const& promise : promises->all) {
        auto const proof = prove(*promises, promise, {});
        if (proof.result == ProofResult::holds) continue;
        CHECK(proof.result == ProofResult::broken);
        result.insert(proof.id);
        // Read from its own text and judged by the engine: it breaks the promise.
        auto const baby = real_baby(proof.case_text);
        std::string finding;
        CHECK(broken_by(*promises, promise, baby, finding) == proof.said);
    }
    return result;
}

}  // namespace

TEST_CASE("a rule made milder, given a condition or lost breaks the promise that rests on it") {
    CHECK(broken(changed_book("rules/newborn/referrals/anus.yaml",
                              "suggest: { service: surgery, urgency: emergency }",
                              "suggest: { service: surgery, urgency: same-day }"))
              .contains("closed-anus-surgery-now"));
    CHECK(broken(
              changed_book(
                  "rules/newborn/referrals/anus.yaml",
                  "{ any: [ { present: imperforate-anus }, { present: persistent-cloaca } ] }",
                  "{ all: [ { present: imperforate-anus }, { gestation: { at-least: 37w0d } } ] }"))
              .contains("closed-anus-surgery-now"));
    CHECK(broken(changed_book("rules/newborn/referrals/counting.yaml",
                              "when: { tally: minor-variants, at-least: 3 }",
                              "when: { tally: minor-variants, at-least: 4 }"))
              .contains("three-minor-variants-reach-genetics"));
    CHECK(broken(changed_book("rules/newborn/referrals/counting.yaml",
                              "when: { tally: minor-variants, at-least: 3 }",
                              "when: { tally: minor-variants, at-least: 1 }"))
              .contains("one-minor-variant-alone-never-genetics"));
}
