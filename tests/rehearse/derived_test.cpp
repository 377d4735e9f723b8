// SPDX-License-Identifier: MIT
// Findings that numbers decide: what a vignette can say of them, and which edits of their
// derivation it notices. Expected by hand; a ruler of 1 mm leaves half a millimetre either way.
#include "review/mutant_trial.h"
#include "review/rehearse.h"
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

std::string derive(std::string const& finding, std::string const& when) {
    return "  - { derive: " + finding + ", when: " + when + ", because: x., sources: [s] }\n";
}

/// A baby of this width, of whom a vignette says that the nubbin is `state`.
std::string wide(std::string const& id, std::string const& width, std::string const& state) {
    return "  - { vignette: " + id +
           ", story: x., case: { examined: all, measures: { width: " + width +
           " } }, expect: { referrals: not-compared, classes: { nubbin: " + state +
           " } }, sources: [s] }\n";
}

CompiledRulebook book(std::string const& derived, std::string const& vignettes,
                      std::string const& ontology = small_ontology) {
    auto loaded = load(small_book_head + "derived:\n" + derived + "rules:\n" +
                           rule("seen", "{ present: lens }", "genetics", "urgent") +
                           (vignettes.empty() ? "vignettes: []\n" : "vignettes:\n" + vignettes),
                       ontology);
    for (auto const& one : loaded.diagnostics.sorted()) MESSAGE(one.message);
    REQUIRE(loaded.book);
    return std::move(*loaded.book);
}

std::vector<TriedMutant> of_part(CompiledRulebook const& book, std::string const& part,
                                 MutantKind kind) {
    Diagnostics diagnostics;
    auto const vignettes = read_vignettes(book, diagnostics);
    REQUIRE_FALSE(diagnostics.has_errors());
    std::vector<TriedMutant> result;
    for (auto const& one : try_mutants(book, vignettes, {}).tried)
        if (one.mutant.part == part && one.mutant.kind == kind) result.push_back(one);
    return result;
}

std::string const over_ten = derive("nubbin", "{ measured: width, mm: { above: 10 } }");

/// `gap` is computed from `width` and `depth`.
std::string with_gap() {
    auto text = small_ontology;
    std::string const depth =
        "  - { measure: depth, label: depth, unit: mm, units: [mm], plausible: { from: 0, to: 50 "
        "}, "
        "step: palm, instrument: ruler, resolution: 1 }\n";
    std::string const gap =
        "  - { measure: gap, label: gap, unit: mm, units: [mm], plausible: { from: 0, to: 50 }, "
        "step: palm, computed: { absolute-difference: [width, depth] } }\n";
    return text.insert(text.find("sources:\n"), depth + gap);
}

std::string const gap_over_three = "{ measured: gap, mm: { above: 3 } }";

/// The last member of the derivation of `lens` left out; `cloudy`, a lens sign, rests on the gap.
TriedMutant without_gap(std::string const& others) {
    auto const loaded = book(derive("lens", "{ any: [ " + others + ", " + gap_over_three + " ] }") +
                                 derive("cloudy", gap_over_three),
                             "", with_gap());
    auto const dropped = of_part(loaded, "lens", MutantKind::dropped);
    REQUIRE_FALSE(dropped.empty());
    return dropped.back();
}

}  // namespace

TEST_CASE("a vignette says of a derived finding that it is there, not there or open") {
    for (auto const& [width, state] :
         {std::pair("12 mm", "normal-variant"), std::pair("8 mm", "not-present"),
          std::pair("10 mm", "open")}) {
        for (auto const* said : {"normal-variant", "not-present", "open"}) {
            CAPTURE(width);
            CAPTURE(said);
            Diagnostics diagnostics;
            auto const failures = rehearse(book(over_ten, wide("v", width, said)), diagnostics);
            CHECK_FALSE(diagnostics.has_errors());
            CHECK(failures.empty() == (std::string(said) == state));
        }
    }
}

TEST_CASE("a word that is no class and no state is a problem") {
    Diagnostics diagnostics;
    auto const loaded = book(over_ten, wide("v", "8 mm", "not-presnt"));
    CHECK(read_vignettes(loaded, diagnostics).empty());
    REQUIRE(diagnostics.has_errors());
    CHECK(diagnostics.sorted().front().help.find("not-present") != std::string::npos);
}

TEST_CASE("the limit of a derivation is noticed even where no rule and no count asks for it") {
    for (auto const& one : of_part(book(over_ten, ""), "nubbin", MutantKind::threshold)) {
        CHECK(one.fate == MutantFate::survived);
        CHECK(one.killer.find("nubbin: ") != std::string::npos);
    }
    auto const near = wide("on", "10 mm", "open");
    auto const moved = of_part(book(over_ten, near), "nubbin", MutantKind::threshold);
    CHECK(moved.size() == 2);
    for (auto const& one : moved) CHECK(one.fate == MutantFate::killed);
}

TEST_CASE(
    "a measure computed from the others asked for may be left out where nothing hangs on it") {
    auto const needless = without_gap(
        "{ measured: width, mm: { above: 10 } }, { measured: depth, mm: { above: 10 } }");
    CHECK(needless.fate == MutantFate::equivalent);
    // Without the depth the gap is what makes a baby of whom only the width is known undecided.
    auto const needed = without_gap("{ measured: width, mm: { above: 10 } }");
    CHECK(needed.fate == MutantFate::survived);
}
