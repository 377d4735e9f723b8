// SPDX-License-Identifier: MIT
#include "review/vignette.h"

#include "cases/read_case.h"
#include "rulebook/vocabulary.h"
#include "yaml/table.h"

namespace asterism {

namespace {

struct ReferralSyntax {
    Verdict verdict = Verdict::suggested;
    std::optional<Urgency> urgency;
    std::optional<std::vector<Word>> by;
};

struct ExpectSyntax {
    yaml::Node referrals, tallies, constellations;
};

yaml::Reader<Verdict> verdict_reader() {
    return yaml::choice<Verdict>({{"suggested", Verdict::suggested},
                                  {"unsettled", Verdict::unsettled},
                                  {"not-suggested", Verdict::not_suggested}});
}

yaml::Table<ReferralSyntax> referral_table() {
    yaml::Table<ReferralSyntax> table("expected referral");
    table.required("verdict", &ReferralSyntax::verdict, verdict_reader(), "the verdict")
        .optional("urgency", &ReferralSyntax::urgency, yaml::maybe(urgency_reader()), "the urgency")
        .optional("by", &ReferralSyntax::by, yaml::maybe(yaml::one_or_more(yaml::word("rule"))),
                  "every rule that decides it");
    return table;
}

yaml::Table<ExpectSyntax> expect_table() {
    yaml::Table<ExpectSyntax> table("expectation");
    table
        .optional("referrals", &ExpectSyntax::referrals, yaml::raw("expected-referrals"),
                  "by service; others must not be suggested")
        .optional("tallies", &ExpectSyntax::tallies, yaml::raw("expected-tallies"),
                  "by tally: what is counted for certain")
        .optional("constellations", &ExpectSyntax::constellations,
                  yaml::raw("expected-constellations"), "reached, missed or open");
    return table;
}

template <class List>
bool known(List const& things, Word const& word, std::string_view what,
           Diagnostics& diagnostics) {
    std::vector<std::string> ids;
    for (auto const& thing : things) ids.push_back(thing.id.text);
    if (std::find(ids.begin(), ids.end(), word.text) != ids.end()) return true;
    yaml::unknown_word(word, what, ids, diagnostics);
    return false;
}

class VignetteReader {
public:
    VignetteReader(CompiledRulebook const& book, Diagnostics& diagnostics)
        : book_(book), diagnostics_(diagnostics) {}

    Vignette read(VignetteSyntax const& syntax) {
        Vignette vignette;
        vignette.id = syntax.id;
        vignette.baby = read_case(syntax.baby, *book_.ontology, diagnostics_);
        ExpectSyntax expect;
        expect_table().read(syntax.expect, expect, diagnostics_);
        for (auto const& [service, value] : expect.referrals.entries)
            referral(service, value, vignette);
        for (auto const& [tally, value] : expect.tallies.entries) add_tally(tally, value, vignette);
        for (auto const& [name, value] : expect.constellations.entries)
            constellation(name, value, vignette);
        return vignette;
    }

private:
    void referral(Word const& service, yaml::Node const& value, Vignette& vignette) {
        ReferralSyntax syntax;
        if (value.is_scalar())
            verdict_reader().read(value, syntax.verdict, diagnostics_);
        else
            referral_table().read(value, syntax, diagnostics_);
        known(book_.book->services, service, "service", diagnostics_);
        for (auto const& rule : syntax.by.value_or(std::vector<Word>{}))
            known(book_.book->rules, rule, "rule", diagnostics_);
        vignette.referrals.push_back({service, syntax.verdict, syntax.urgency, syntax.by});
    }

    void add_tally(Word const& tally, yaml::Node const& value, Vignette& vignette) {
        ExpectedTally expected{tally, 0};
        yaml::number().read(value, expected.value, diagnostics_);
        std::vector<std::string> ids;
        for (auto const& known_tally : book_.tallies) ids.push_back(known_tally.id);
        bool const exists = std::find(ids.begin(), ids.end(), tally.text) != ids.end();
        if (exists)
            vignette.tallies.push_back(expected);
        else
            yaml::unknown_word(tally, "tally", ids, diagnostics_);
    }

    void constellation(Word const& name, yaml::Node const& value, Vignette& vignette) {
        ExpectedConstellation expected{name, Truth::yes};
        yaml::choice<Truth>(
            {{"reached", Truth::yes}, {"missed", Truth::no}, {"open", Truth::unknown}})
            .read(value, expected.reached, diagnostics_);
        if (known(book_.book->constellations, name, "constellation", diagnostics_))
            vignette.constellations.push_back(expected);
    }

    CompiledRulebook const& book_;
    Diagnostics& diagnostics_;
};

}  // namespace

std::vector<Vignette> read_vignettes(CompiledRulebook const& book, Diagnostics& diagnostics) {
    std::vector<Vignette> result;
    for (auto const& syntax : book.book->vignettes) {
        Diagnostics problems;
        auto vignette = VignetteReader(book, problems).read(syntax);
        if (!problems.has_errors()) result.push_back(std::move(vignette));
        diagnostics.append(problems);
    }
    return result;
}

}  // namespace asterism
