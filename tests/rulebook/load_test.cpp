// SPDX-License-Identifier: MIT
/// Reading a rulebook from its files: sections, digest, header and the folder of vignettes.
#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "rulebook/rulebook.h"
#include "rulebook/vocabulary.h"
#include "testing.h"

using namespace asterism;

namespace {

using Files = std::vector<std::pair<std::string, std::string>>;

std::string const header =
    "rulebook: {id: b, title: Book, version: 1.0.0, effective: 2031-01-01, language: 1, "
    "ontology: o}\n";
std::string const services = "services:\n  - {service: genetics, label: genetics clinic}\n";
std::string const classes =
    "classes:\n  - {finding: ear, class: minor-variant, because: x., sources: common-practice, "
    "key: ears}\n";
std::string const rules =
    "rules:\n  - {rule: three, when: {count: minors}, suggest: {service: genetics, urgency: "
    "routine},\n     because: x., strength: study, sources: [s1, s2]}\n";
std::string const vignette =
    "vignettes:\n  - {vignette: v, story: a., case: {}, expect: {}, sources: common-practice}\n";

struct Loading {
    std::optional<Rulebook> book;
    Diagnostics diagnostics;

    std::vector<Diagnostic> coded(std::string const& code) const {
        auto result = diagnostics.sorted();
        std::erase_if(result, [&](Diagnostic const& d) { return d.code != code; });
        return result;
    }
};

Loading load(Files const& files) {
    std::vector<SourcePtr> sources;
    for (auto const& [name, text] : files) sources.push_back(make_source(name, text));
    Loading loading;
    loading.book = load_rulebook(sources, loading.diagnostics);
    return loading;
}

std::string digest_of(Files const& files) {
    auto const loading = load(files);
    REQUIRE(loading.book);
    return loading.book->digest;
}

std::string changed(std::string text, std::string const& from, std::string const& to) {
    auto const at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

}  // namespace

TEST_CASE("a book in one file") {
    auto const loading = load({{"book.yaml", header + services + classes + rules + vignette}});
    REQUIRE(loading.book);
    CHECK(loading.diagnostics.empty());
    auto const& book = *loading.book;
    CHECK(book.header.id.text == "b");
    CHECK(book.header.title == "Book");
    CHECK(book.header.effective.text == "2031-01-01");
    CHECK(book.header.language == 1);
    REQUIRE(book.rules.size() == 1);
    CHECK(book.rules[0].suggest.size() == 1);
    CHECK(book.rules[0].suggest[0].urgency == Urgency::routine);
    CHECK(book.rules[0].sources.size() == 2);
    CHECK(book.rules[0].strength == Strength::study);
    CHECK(yaml::to_text(book.rules[0].when) == "{count: minors}");
    REQUIRE(book.classes.size() == 1);
    CHECK(book.classes[0].value == FindingClass::minor_variant);
    CHECK(book.classes[0].key.text == "ears");
    CHECK(book.classes[0].sources.size() == 1);
    CHECK(book.vignettes.size() == 1);
}

TEST_CASE("sections may be spread over files, in the order given") {
    auto const second = changed(services, "genetics, label: genetics", "eyes, label: eye");
    auto const loading =
        load({{"a.yaml", services + rules}, {"b.yaml", header + second}, {"c.yaml", classes}});
    REQUIRE(loading.book);
    REQUIRE(loading.book->services.size() == 2);
    CHECK(loading.book->services[0].id.text == "genetics");
    CHECK(loading.book->services[1].id.text == "eyes");
    CHECK(loading.book->services[1].id.span.place() == "b.yaml:3:15");
    CHECK(loading.book->rules.size() == 1);
    CHECK(loading.book->classes.size() == 1);
}

TEST_CASE("the digest leaves out vignettes and names of files, nothing else") {
    auto const plain = digest_of({{"a.yaml", header}, {"b.yaml", classes}});
    CHECK(plain.size() == 64);
    CHECK(plain == digest_of({{"x/y.yaml", header}, {"z.yaml", classes}}));
    CHECK(plain ==
          digest_of({{"a.yaml", header}, {"b.yaml", classes}, {"vignettes/v.yaml", vignette}}));
    CHECK(
        plain ==
        digest_of({{"rules/vignettes/v.yaml", vignette}, {"a.yaml", header}, {"b.yaml", classes}}));
    CHECK(plain != digest_of({{"a.yaml", header}, {"b.yaml", classes + "# x\n"}}));
    CHECK(plain != digest_of({{"a.yaml", header}, {"b.yaml", classes}, {"c.yaml", vignette}}));
    CHECK(plain != digest_of({{"a.yaml", header}}));
}

TEST_CASE("vignettes are read from their folder") {
    auto const loading = load({{"a.yaml", header}, {"vignettes/v.yaml", vignette}});
    REQUIRE(loading.book);
    REQUIRE(loading.book->vignettes.size() == 1);
    CHECK(loading.book->vignettes[0].id.text == "v");
    CHECK_FALSE(loading.book->vignettes[0].published);
}

TEST_CASE("the folder of vignettes may hold nothing that the digest would miss") {
    for (auto const& text : {classes, rules, vignette + classes, services}) {
        CAPTURE(text);
        auto const loading = load({{"a.yaml", header}, {"book/vignettes/v.yaml", text}});
        CHECK_FALSE(loading.book);
        CHECK(loading.coded("not-a-vignette").size() == 1);
    }
}

TEST_CASE("only a folder of exactly that name is the folder of vignettes") {
    auto const plain = digest_of({{"a.yaml", header}, {"b.yaml", classes}});
    for (std::string const name : {"old-vignettes/b.yaml", "vignettes.yaml", "x/myvignettes/b.yaml",
                                   "vignettes-old/b.yaml"}) {
        CAPTURE(name);
        auto const loading = load({{"a.yaml", header}, {name, classes}});
        REQUIRE(loading.book);
        CHECK(loading.book->digest == plain);
    }
}

TEST_CASE("a book has one header") {
    auto const none = load({{"a.yaml", services}});
    CHECK_FALSE(none.book);
    CHECK(none.coded("missing-header").size() == 1);
    auto const two = load({{"a.yaml", header}, {"b.yaml", header}});
    CHECK_FALSE(two.book);
    REQUIRE(two.coded("second-header").size() == 1);
    CHECK(two.coded("second-header")[0].span.source->name() == "b.yaml");
    CHECK_FALSE(load({}).book);
}

TEST_CASE("one change breaks a sound book in one way") {
    struct Row {
        std::string from;
        std::string to;
        std::string code;
        std::string part;
    };
    for (Row const& row : {
             Row{"minor-variant", "minor-varient", "unknown-value", "did you mean `minor-variant`"},
             Row{"minor-variant", "blue", "unknown-value",
                 "accepted: normal-variant, minor-variant, major-anomaly, red-flag"},
             Row{"urgency: routine", "urgency: routin", "unknown-value", "did you mean `routine`"},
             Row{"strength: study", "strength: studdy", "unknown-value", "did you mean `study`"},
             Row{"language: 1", "language: 2", "wrong-form", "from 1 to 1"},
             Row{"language: 1", "language: '1'", "wrong-form", "from 1 to 1"},
             Row{"because: x., strength", "strength", "missing-key",
                 "the rule lacks the key `because`"},
             Row{", sources: [s1, s2]", "", "missing-key", "the rule lacks the key `sources`"},
             Row{"sources: common-practice, key", "source: common-practice, key", "unknown-key",
                 "did you mean `sources`"},
             Row{"rules:", "rulez:", "unknown-key", "`rules`"},
             Row{"service: genetics, urgency", "services: genetics, urgency", "unknown-key",
                 "did you mean `service`"},
             Row{"class: minor-variant", "class: [minor-variant]", "wrong-form", "one word"},
         }) {
        CAPTURE(row.to);
        auto const text = changed(header + services + classes + rules, row.from, row.to);
        auto const loading = load({{"book.yaml", text}});
        CHECK_FALSE(loading.book);
        auto const found = loading.coded(row.code);
        REQUIRE_FALSE(found.empty());
        CHECK((found[0].message + " " + found[0].help).find(row.part) != std::string::npos);
        CHECK(found[0].span.known());
    }
}

TEST_CASE("all problems of all files are told at once") {
    auto const loading = load({{"a.yaml", changed(classes, "minor-variant", "bad")},
                               {"b.yaml", "a: [\n"},
                               {"c.yaml", changed(rules, "strength: study", "strength: bad")}});
    CHECK_FALSE(loading.book);
    CHECK(loading.coded("unknown-value").size() == 2);
    CHECK(loading.coded("yaml-syntax").size() == 1);
    CHECK(loading.coded("missing-header").size() == 1);
}

TEST_CASE("items of a constellation stand in a list or in named groups") {
    std::string const start =
        "constellations:\n  - {constellation: c, label: l, for: genetics, reached: {}, "
        "strength: study, sources: s, items: ";
    auto const plain = load(
        {{"a.yaml", header + start + "[{item: i, when: x}, {item: k, when: y, points: 2.5}]}\n"}});
    REQUIRE(plain.book);
    REQUIRE(plain.book->constellations[0].groups.size() == 1);
    CHECK(plain.book->constellations[0].groups[0].name.empty());
    CHECK(plain.book->constellations[0].groups[0].items[0].points == 1);
    CHECK(plain.book->constellations[0].groups[0].items[1].points == 2.5);
    auto const grouped = load({{"a.yaml", header + start +
                                              "{major: [{item: i, when: x}], minor: [{item: k, "
                                              "when: y}]}}\n"}});
    REQUIRE(grouped.book);
    REQUIRE(grouped.book->constellations[0].groups.size() == 2);
    CHECK(grouped.book->constellations[0].groups[1].name.text == "minor");
}

TEST_CASE("a tally counts one class or several") {
    auto const loading = load({{"a.yaml", header + "tallies:\n"
                                                   "  - {tally: a, label: l, count: red-flag}\n"
                                                   "  - {tally: b, label: l, count: "
                                                   "[red-flag, major-anomaly]}\n"}});
    REQUIRE(loading.book);
    CHECK(loading.book->tallies[0].count.size() == 1);
    CHECK(loading.book->tallies[1].count.size() == 2);
}

TEST_CASE("closed word lists read what they print") {
    auto const reads = [](auto reader, auto value) {
        auto target = decltype(value){};
        Diagnostics diagnostics;
        reader.read(yaml::scalar({std::string(to_text(value)), {}}), target, diagnostics);
        return diagnostics.empty() && target == value;
    };
    for (auto const value : {FindingClass::normal_variant, FindingClass::minor_variant,
                             FindingClass::major_anomaly, FindingClass::red_flag})
        CHECK(reads(finding_class_reader(), value));
    for (auto const value :
         {Urgency::routine, Urgency::urgent, Urgency::same_day, Urgency::emergency})
        CHECK(reads(urgency_reader(), value));
    for (auto const value : {KeyKind::field, KeyKind::sequence, KeyKind::system})
        CHECK(reads(key_kind_reader(), value));
    for (auto const value : {Strength::guideline, Strength::study, Strength::common_practice,
                             Strength::project_choice})
        CHECK(reads(strength_reader(), value));
}

TEST_CASE("classes are ordered from harmless to urgent, urgencies from late to now") {
    CHECK(FindingClass::normal_variant < FindingClass::minor_variant);
    CHECK(FindingClass::minor_variant < FindingClass::major_anomaly);
    CHECK(FindingClass::major_anomaly < FindingClass::red_flag);
    CHECK(Urgency::routine < Urgency::urgent);
    CHECK(Urgency::urgent < Urgency::same_day);
    CHECK(Urgency::same_day < Urgency::emergency);
}
