// SPDX-License-Identifier: MIT
/// An answer as text, JSON, Markdown, HTML and as a note: what each must hold,
/// and that nothing from outside does harm in any.
#include <algorithm>
#include <set>

#include <nlohmann/json.hpp>

#include "assess/changes.h"
#include "base/fold.h"
#include "render/assessment_context.h"
#include "render/assessment_html.h"
#include "render/assessment_markdown.h"
#include "render/assessment_text.h"
#include "render/consult.h"
#include "render/json.h"
#include "support/small_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

CompiledRulebook const& book() {
    static CompiledRulebook const loaded =
        small_book(rule("two", "{ tally: minors, at-least: 2 }", "genetics", "urgent",
                        ", caution: Mind the parents.") +
                   rule("flag", "{ present: opaque }", "ophthalmology", "same-day") +
                   rule("scan", "{ present: breech }", "orthopaedics", "routine",
                        ", follow-up: { action: scan, from: 4w, to: 6w }, first-steps: "
                        "[scan]"));
    return loaded;
}

std::string const whole_case =
    "case: demo-1\nsex: male\nborn: "
    "2031-04-02\nexamined: [all, except: [reflex]]\n"
    "findings: [testis, { finding: crease, side: "
    "left }, nubbin]\nhistory: [breech]\n";

Assessment answer(std::string const& text) {
    auto const one = baby(book(), text);
    auto result = assess(book(), one);
    add_what_would_change(book(), one, result);
    return result;
}

std::vector<std::string> every_format(std::string const& text) {
    auto const one = baby(book(), text);
    auto result = assess(book(), one);
    add_what_would_change(book(), one, result);
    auto const context = context_of(one, *book().ontology);
    return {assessment_text(result, {}), assessment_text(result, {false, Detail::full}),
            assessment_markdown(result, context), consult_note(result, context),
            assessment_html(result, context)};
}

std::vector<std::string> lines_of(std::string const& text) {
    std::vector<std::string> lines;
    std::size_t begin = 0;
    while (begin < text.size()) {
        auto const end = std::min(text.find('\n', begin), text.size());
        lines.push_back(text.substr(begin, end - begin));
        begin = end + 1;
    }
    return lines;
}

}  // namespace

TEST_CASE(
    "the brief answer: 80 columns, 40 lines, what to do first, the "
    "caution last") {
    auto const text = assessment_text(answer(whole_case), {});
    auto const lines = lines_of(text);
    CHECK(lines.size() <= brief_lines);
    for (auto const& line : lines) {
        CAPTURE(line);
        CHECK(display_width(line) <= 80);
    }
    CHECK(lines.front().find("genetics") != std::string::npos);
    CHECK(text.find("Because two.") != std::string::npos);
    CHECK(text.find("[two]") != std::string::npos);
    CHECK(text.find("nubbin: normal variant") != std::string::npos);
    CHECK(text.find("2031-04-30 to 2031-05-14") != std::string::npos);
    CHECK(text.find("Nothing here is a diagnosis") != std::string::npos);
}

TEST_CASE("while an essential step is open the first line names it") {
    CHECK(lines_of(assessment_text(answer(whole_case), {})).front().find("reflex") !=
          std::string::npos);
    auto const done = assessment_text(answer("examined: all\nfindings: [slant]\n"), {});
    CHECK(lines_of(done).front().find("reflex") == std::string::npos);
}

TEST_CASE(
    "bare findings get an answer as if the rest were normal, with its "
    "condition") {
    auto const text = assessment_text(answer("findings: [slant]\n"), {});
    CHECK(text.find("If everything not examined were normal: no referral") != std::string::npos);
}

TEST_CASE("no colour unless asked; the words are the same") {
    auto const result = answer(whole_case);
    auto const plain = assessment_text(result, {});
    CHECK(plain.find('\x1b') == std::string::npos);
    auto coloured = assessment_text(result, {true, Detail::brief});
    CHECK(coloured.find('\x1b') != std::string::npos);
    std::string stripped;
    for (std::size_t i = 0; i < coloured.size(); ++i) {
        if (coloured[i] == '\x1b') {
            while (coloured[i] != 'm') ++i;
        } else {
            stripped += coloured[i];
        }
    }
    CHECK(stripped == plain);
}

TEST_CASE("the JSON has every key of the contract, for every referral") {
    auto const json = assessment_json(answer(whole_case));
    CHECK(json["schema"] == "asterism.assessment/1");
    for (auto const* key : {"engine", "rulebook", "ontology", "case", "urgency", "referrals",
                            "measures", "set_aside", "tallies", "constellations", "findings",
                            "not_examined", "first_steps", "follow_up", "cautions"}) {
        CAPTURE(key);
        CHECK(json.contains(key));
    }
    REQUIRE(json["referrals"].size() == 3);
    for (auto const& referral : json["referrals"]) {
        for (auto const* key : {"service", "verdict", "if_rest_normal", "urgency", "reasons",
                                "may_rise_to", "settled_by", "what_would_change"}) {
            CAPTURE(key);
            CHECK(referral.contains(key));
        }
        for (auto const* key : {"without", "with", "examine"})
            CHECK(referral["what_would_change"].contains(key));
    }
}

TEST_CASE("the JSON says who decided, on what, from where") {
    auto const json = assessment_json(answer(whole_case));
    CHECK(json["case"] == "demo-1");
    CHECK(json["urgency"] == "urgent");
    auto const& genetics = json["referrals"][0];
    CHECK(genetics["verdict"] == "suggested");
    CHECK(genetics["if_rest_normal"].is_null());
    auto const& reason = genetics["reasons"][0];
    CHECK(reason["rule"] == "two");
    CHECK(reason["text"] == "Because two.");
    CHECK(reason["sources"] == nlohmann::ordered_json::array({"s"}));
    CHECK(reason["caution"] == "Mind the parents.");
    CHECK(reason["place"].get<std::string>().find("book.yaml:") == 0);
    std::set<std::string> findings;
    for (auto const& e : reason["evidence"])
        if (e.contains("finding")) findings.insert(e["finding"]);
    CHECK(findings == std::set<std::string>{"testis", "crease"});
    auto const& eyes = json["referrals"][1];
    CHECK(eyes["verdict"] == "unsettled");
    CHECK(eyes["if_rest_normal"] == "not-suggested");
    CHECK(eyes["urgency"].is_null());
    CHECK(eyes["settled_by"][0]["step"] == "reflex");
    CHECK(eyes["settled_by"][0]["essential"] == true);
    CHECK(eyes["what_would_change"]["examine"][0]["step"] == "reflex");
    CHECK(genetics["what_would_change"]["without"].size() == 2);
}

TEST_CASE("the JSON carries provenance: versions and whole digests") {
    auto const json = assessment_json(answer(whole_case));
    CHECK(json["rulebook"]["id"] == "small");
    CHECK(json["rulebook"]["sha256"].get<std::string>().size() == 64);
    CHECK(json["ontology"]["sha256"].get<std::string>().size() == 64);
    CHECK(json["ontology"]["hpo_version"] == "2024-08-13");
    CHECK(json["engine"] == engine_version());
}

TEST_CASE("the JSON of follow-up, first steps, set-aside, tallies and findings") {
    auto const json = assessment_json(answer(whole_case));
    REQUIRE(json["follow_up"].size() == 1);
    CHECK(json["follow_up"][0]["from_date"] == "2031-04-30");
    CHECK(json["follow_up"][0]["rule"] == "scan");
    CHECK(json["first_steps"][0]["text"] == "Scan the hips.");
    CHECK(json["set_aside"][0]["finding"] == "nubbin");
    CHECK(json["set_aside"][0]["why"] == "normal variant");
    CHECK(json["tallies"][0]["value"] == "2");
    CHECK(json["tallies"][1]["value"] == "0");
    CHECK(json["tallies"][1]["at_most"] == "1");
    std::set<std::string> names;
    for (auto const& e : json["findings"]) names.insert(e["finding"]);
    CHECK(names == std::set<std::string>{"testis", "crease", "nubbin", "breech"});
}

TEST_CASE("a case without an id or a suggestion has nulls, not missing keys") {
    auto const json = assessment_json(answer("examined: all\n"));
    CHECK(json["case"].is_null());
    CHECK(json["urgency"].is_null());
}

TEST_CASE("the same answer gives the same bytes in every format") {
    CHECK(every_format(whole_case) == every_format(whole_case));
    CHECK(json_text(assessment_json(answer(whole_case))) ==
          json_text(assessment_json(answer(whole_case))));
}

TEST_CASE(
    "every format for people carries the caution, and the source of its "
    "rules") {
    for (auto const& text : every_format(whole_case)) {
        std::string joined;
        for (char const c : text) joined += c == '\n' ? ' ' : c;
        CHECK(joined.find("Nothing here is a diagnosis") != std::string::npos);
        CHECK(joined.find(engine_version()) != std::string::npos);
    }
}

TEST_CASE(
    "nothing that a person wrote is obeyed: HTML, escape sequences, "
    "direction marks") {
    std::string const nasty =
        "case: \"<script>x</script>\\e]0;t\\a\\u202e*b*\"\nexamined: all\n"
        "findings: [\"slanting  EYES\", crease]\n";
    auto const formats = every_format(nasty);
    // Text and note are plain; a tag means something only in HTML and Markdown.
    for (auto const at : {2u, 4u}) CHECK(formats[at].find("<script") == std::string::npos);
    for (auto const& text : formats) {
        CHECK(text.find('\x1b') == std::string::npos);
        CHECK(text.find('\a') == std::string::npos);
        CHECK(text.find("\u202e") == std::string::npos);
    }
    auto const json = json_text(assessment_json(answer(nasty)));
    CHECK(json.find('\x1b') == std::string::npos);
    CHECK(nlohmann::json::parse(json)["case"].get<std::string>().find("<script>") == 0);
}

TEST_CASE("a trace in lines: value, condition, what was seen") {
    auto const one = baby(book(), "findings: [slant]\nexamined: [palm]\n");
    auto const text = trace_text(trace(book(), one, "flag"), "flag");
    CHECK(text == "Rule flag\n  unknown opaque lens [not examined]\n");
    auto const count = trace_text(trace(book(), one, "two"), "two");
    CHECK(count.find("at least 2 minor variants") != std::string::npos);
}
