// SPDX-License-Identifier: MIT
#include "review/vignette.h"

#include <utility>

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
    yaml::Node referrals, tallies, constellations, classes;
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

yaml::Reader<Truth> reached_reader() {
    return yaml::choice<Truth>(
        {{"reached", Truth::yes}, {"missed", Truth::no}, {"open", Truth::unknown}});
}

/// A map from names to values that are read later; that it is a map is seen here.
yaml::Reader<yaml::Node> map_of(yaml::Shape value, std::string keys) {
    auto reader = yaml::raw(yaml::map_shape(std::move(value), std::move(keys)));
    reader.read = [](yaml::Node const& node, yaml::Node& target, Diagnostics& diagnostics) {
        if (!node.is_map()) return yaml::wrong_form(node, "a map", diagnostics);
        target = node;
    };
    return reader;
}

/// Such a map, or the word that stands in its place.
yaml::Reader<yaml::Node> map_or_word(yaml::Shape value, std::string keys) {
    auto const word = yaml::choice<bool>({{"not-compared", true}}).shape;
    auto reader = map_of(std::move(value), std::move(keys));
    reader.shape = yaml::either_shape({word, reader.shape});
    reader.read = [](yaml::Node const& node, yaml::Node& target, Diagnostics& diagnostics) {
        if (!node.is_map() && !node.is_scalar())
            return yaml::wrong_form(node, "a map or `not-compared`", diagnostics);
        target = node;
    };
    return reader;
}

/// Whether a finding is there, and its class when it is.
using Presence = std::pair<Truth, std::optional<FindingClass>>;

yaml::Reader<Presence> presence_reader() {
    return yaml::choice<Presence>({{"normal-variant", {Truth::yes, FindingClass::normal_variant}},
                                   {"minor-variant", {Truth::yes, FindingClass::minor_variant}},
                                   {"major-anomaly", {Truth::yes, FindingClass::major_anomaly}},
                                   {"red-flag", {Truth::yes, FindingClass::red_flag}},
                                   {"not-present", {Truth::no, {}}},
                                   {"open", {Truth::unknown, {}}}});
}

yaml::Table<ExpectSyntax> expect_table() {
    auto const referral = yaml::either_shape({verdict_reader().shape, referral_table().shape()});
    yaml::Table<ExpectSyntax> table("expectation");
    table
        .optional("referrals", &ExpectSyntax::referrals, map_or_word(referral, "service"),
                  "by service; others must not be suggested; or `not-compared`")
        .optional("tallies", &ExpectSyntax::tallies, map_of(yaml::number().shape, "tally"),
                  "by tally: what is counted for certain")
        .optional("constellations", &ExpectSyntax::constellations,
                  map_of(reached_reader().shape, "constellation"), "reached, missed or open")
        .optional("classes", &ExpectSyntax::classes, map_of(presence_reader().shape, "finding"),
                  "by finding of the baby: its class, or that it is not present");
    return table;
}

template <class List>
bool known(List const& things, Word const& word, std::string_view what, Diagnostics& diagnostics) {
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
        vignette.generated = syntax.generated;
        vignette.sourced = !syntax.sources.empty();
        vignette.baby = read_case(syntax.baby, *book_.ontology, diagnostics_);
        ExpectSyntax expect;
        expect_table().read(syntax.expect, expect, diagnostics_);
        if (expect.referrals.is_scalar()) leave_referrals_out(expect.referrals, vignette);
        for (auto const& [service, value] : expect.referrals.entries)
            referral(service, value, vignette);
        for (auto const& [tally, value] : expect.tallies.entries) add_tally(tally, value, vignette);
        for (auto const& [name, value] : expect.constellations.entries)
            constellation(name, value, vignette);
        for (auto const& [finding, value] : expect.classes.entries)
            add_class(finding, value, vignette);
        return vignette;
    }

private:
    void leave_referrals_out(yaml::Node const& value, Vignette& vignette) {
        if (value.text == "not-compared")
            vignette.compares_referrals = false;
        else
            yaml::unknown_word(value.word(), "value", {"not-compared"}, diagnostics_);
    }

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
        reached_reader().read(value, expected.reached, diagnostics_);
        if (known(book_.book->constellations, name, "constellation", diagnostics_))
            vignette.constellations.push_back(expected);
    }

    void add_class(Word const& name, yaml::Node const& value, Vignette& vignette) {
        Presence presence;
        presence_reader().read(value, presence, diagnostics_);
        ExpectedClass expected{0, name, presence.first, presence.second};
        if (auto const id = book_.ontology->finding(name.text)) {
            expected.finding = *id;
            vignette.classes.push_back(expected);
        } else {
            known(book_.ontology->findings, name, "finding", diagnostics_);
        }
    }

    CompiledRulebook const& book_;
    Diagnostics& diagnostics_;
};

}  // namespace

yaml::Shape expectation_shape() { return expect_table().shape(); }

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
