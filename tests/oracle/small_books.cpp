// SPDX-License-Identifier: MIT
#include "oracle/small_books.h"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace asterism::oracle {

namespace {

constexpr std::string_view header = R"(
rulebook: { id: small, title: Small, version: 1.0.0, effective: 2031-01-01, language: 1, ontology: small }
services:
  - { service: genetics, label: genetics }
  - { service: surgery, label: surgery }
)";

constexpr std::string_view keys = R"(
keys:
  - { key: ear, kind: field, because: One cause. }
  - { key: hand, kind: field, because: One cause. }
  - { key: face, kind: field, because: One cause. }
  - { key: organ, kind: system, because: One organ., covers: [hand] }
tallies:
  - { tally: minors, label: minor variants, count: [minor-variant] }
  - { tally: majors, label: major anomalies, count: [major-anomaly, red-flag] }
  - { tally: both, label: minors and majors, count: [minor-variant, major-anomaly] }
)";

constexpr std::string_view usual_classes = R"(
  - { finding: ear-change, class: minor-variant, key: ear, because: x, sources: [common-practice] }
  - { finding: low-ear, class: minor-variant, key: ear, because: x, sources: [common-practice] }
  - { finding: crease, class: minor-variant, key: hand, because: x, sources: [common-practice] }
  - { finding: chin, class: major-anomaly, key: organ, because: x, sources: [common-practice] }
)";

constexpr std::string_view score_and_pattern = R"(
  - tally: score
    label: points
    score:
      - { item: ear, when: { present: ear-change }, points: 0.5 }
      - { item: chin, when: { present: chin, grade: marked }, points: 1.5 }
      - { item: not low, when: { absent: low-ear }, points: 1 }
constellations:
  - constellation: pattern
    label: pattern
    for: genetics
    items:
      large: [ { item: crease, when: { present: crease } } ]
      little:
        - { item: ear, when: { present: ear-change } }
        - { item: chin, when: { present: chin }, points: 0.5 }
    reached: { any: [ { tally: pattern/large, at-least: 1 }, { tally: pattern, at-least: 1.5 } ] }
    strength: study
    sources: [common-practice]
derived:
  - { derive: dimple, when: { measured: width, mm: { above: 5 } }, because: x, sources: [common-practice] }
)";

/// A condition without conditions in it, and what it looks at.
struct Leaf {
    std::string text;
    std::vector<std::string> axes;
};

std::vector<Leaf> const& all_leaves() {
    static std::vector<Leaf> const leaves{
        {"{ present: ear-change }", {"ear", "low-ear"}},
        {"{ absent: low-ear }", {"ear", "low-ear"}},
        {"{ present: crease, side: left }", {"crease"}},
        {"{ present: crease, side: both }", {"crease", "deep-crease"}},
        {"{ absent: crease, side: one }", {"crease"}},
        {"{ present: chin, grade: marked }", {"chin"}},
        {"{ absent: chin, grade: [mild, marked] }", {"chin"}},
        {"{ present: foreskin }", {"foreskin", "sex"}},
        {"{ present: breech }", {"breech"}},
        {"{ present: dimple }", {"dimple", "width"}},
        {"{ measured: width, cm: { below: 0.5 } }", {"width"}},
        {"{ measured: depth, mm: { between: [5, 6] } }", {"depth"}},
        {"{ age: { at-least: 24h } }", {"age"}},
        {"{ gestation: { below: 37w0d } }", {"gestation"}},
        {"{ sex: female }", {"sex"}},
        {"{ tally: minors, at-least: 2 }", {"ear", "low-ear", "crease"}},
        {"{ tally: minors, at-most: 0 }", {"ear", "low-ear"}},
        {"{ tally: score, at-least: 1.5 }", {"ear", "chin"}},
        {"{ constellation: pattern }", {"ear", "chin"}},
    };
    return leaves;
}

/// One leaf of a kind, each looking at one thing only.
std::vector<Leaf> const& few_leaves() {
    static std::vector<Leaf> const leaves{
        {"{ present: ear-change }", {"ear"}},
        {"{ absent: low-ear }", {"low-ear"}},
        {"{ present: foreskin }", {"foreskin"}},
        {"{ present: breech }", {"breech"}},
        {"{ measured: depth, mm: { above: 5 } }", {"depth"}},
        {"{ gestation: { at-least: 37w0d } }", {"gestation"}},
        {"{ tally: minors, at-least: 1 }", {"ear"}},
        {"{ constellation: pattern }", {"ear"}},
    };
    return leaves;
}

void look_at(std::vector<std::string>& axes, std::vector<std::string> const& more) {
    for (auto const& axis : more) {
        if (std::find(axes.begin(), axes.end(), axis) == axes.end()) axes.push_back(axis);
    }
}

std::string rule(std::string_view id, std::string_view when, std::string_view suggest,
                 std::string_view essential = "") {
    return fmt::format(
        "  - {{ rule: {}, when: {}, suggest: {}, essential: [{}], because: x, strength: study, "
        "sources: [common-practice] }}\n",
        id, when, suggest, essential);
}

/// The usual classes with one condition, and a part of it that suggests more, less urgently.
SmallBook book_of(std::string const& condition, std::string const& part,
                  std::vector<std::string> axes, std::string_view essential) {
    std::string text =
        fmt::format("{}{}{}classes:{}rules:\n", header, keys, score_and_pattern, usual_classes);
    text += rule("whole", condition, "{ service: genetics, urgency: same-day }", essential);
    text +=
        rule("part", part,
             "[ { service: genetics, urgency: urgent }, { service: surgery, urgency: routine } ]");
    look_at(axes, {"steps"});
    return {std::move(text), std::move(axes)};
}

std::vector<std::string> groups(std::string const& a, std::string const& b) {
    return {fmt::format("{{ all: [ {}, {} ] }}", a, b), fmt::format("{{ any: [ {}, {} ] }}", a, b),
            fmt::format("{{ none: [ {}, {} ] }}", a, b),
            fmt::format("{{ at-least: 2, of: [ {}, {}, {{ none: [ {} ] }} ] }}", a, b, a)};
}

/// A class with a key, as a line of the book; an empty one is no class at all.
std::string class_line(std::string_view finding, std::string_view value, std::string_view key) {
    if (value.empty()) return {};
    auto const with_key = key.empty() ? std::string() : fmt::format("key: {}, ", key);
    return fmt::format(
        "  - {{ finding: {}, class: {}, {}because: x, sources: [common-practice] }}\n", finding,
        value, with_key);
}

std::vector<std::string> class_lines(std::string_view finding) {
    return {class_line(finding, "", ""),
            class_line(finding, "normal-variant", ""),
            class_line(finding, "minor-variant", "ear"),
            class_line(finding, "minor-variant", "hand"),
            class_line(finding, "major-anomaly", "ear"),
            class_line(finding, "major-anomaly", "organ"),
            class_line(finding, "red-flag", "organ"),
            class_line(finding, "red-flag", "")};
}

/// What a derivation and the question for it speak of.
std::vector<std::string> axes_of(std::string const& text) {
    std::vector<std::string> axes{"dimple", "steps"};
    std::vector<std::pair<std::string, std::string>> const words{
        {"width", "width"},           {"depth", "depth"},   {"ear-change", "ear"},
        {"low-ear", "low-ear"},       {"breech", "breech"}, {"sex", "sex"},
        {"present: crease", "crease"}};
    for (auto const& [word, axis] : words) {
        if (text.find(word) != std::string::npos) axes.push_back(axis);
    }
    return axes;
}

std::string counting_rules() {
    return "rules:\n" +
           rule("two", "{ tally: minors, at-least: 2 }",
                "{ service: genetics, urgency: same-day }") +
           rule("mixed",
                "{ all: [ { tally: majors, at-least: 1 }, { tally: minors, at-least: 1 } ] }",
                "{ service: genetics, urgency: urgent }") +
           rule("one", "{ tally: both, at-least: 1 }", "{ service: surgery, urgency: routine }") +
           rule("few", "{ tally: both, at-most: 1 }", "{ service: surgery, urgency: urgent }");
}

}  // namespace

void books_of_pairs(VisitBook const& visit) {
    auto const& leaves = all_leaves();
    for (std::size_t a = 0; a < leaves.size(); ++a) {
        for (std::size_t b = a; b < leaves.size(); ++b) {
            auto axes = leaves[a].axes;
            look_at(axes, leaves[b].axes);
            for (auto const& group : groups(leaves[a].text, leaves[b].text))
                visit(book_of(group, leaves[b].text, axes, a % 2 == 0 ? "breech" : ""));
        }
    }
}

void books_of_nested_pairs(VisitBook const& visit) {
    auto const& leaves = few_leaves();
    for (std::size_t a = 0; a < leaves.size(); ++a) {
        for (std::size_t b = a; b < leaves.size(); ++b) {
            for (auto const& c : leaves) {
                auto axes = leaves[a].axes;
                look_at(axes, leaves[b].axes);
                look_at(axes, c.axes);
                for (auto const& inner : groups(leaves[a].text, leaves[b].text)) {
                    for (auto const& outer : groups(inner, c.text))
                        visit(book_of(outer, inner, axes, b % 2 == 0 ? "breech" : ""));
                }
            }
        }
    }
}

void books_of_classes(VisitBook const& visit) {
    auto const text = fmt::format("{}{}", header, keys);
    for (auto const& ear : class_lines("ear-change")) {
        for (auto const& low_ear : class_lines("low-ear")) {
            for (auto const& chin : class_lines("chin")) {
                for (auto const& crease : {class_line("crease", "minor-variant", "hand"),
                                           class_line("crease", "major-anomaly", "ear")}) {
                    auto const classes = ear + low_ear + chin + crease;
                    visit({text + "classes:\n" + classes + counting_rules(),
                           {"ear", "low-ear", "chin", "steps"}});
                }
            }
        }
    }
}

void books_of_derivations(VisitBook const& visit) {
    std::vector<std::string> const conditions{
        "{ measured: width, mm: { above: 5 } }",
        "{ any: [ { measured: width, mm: { above: 5 } }, { measured: depth, mm: { above: 5 } } ] }",
        "{ all: [ { measured: width, mm: { at-least: 5 } }, { measured: depth, mm: { below: 7 } } "
        "] }",
        "{ all: [ { measured: width, mm: { above: 5 } }, { present: low-ear } ] }",
        "{ any: [ { measured: width, mm: { above: 5 } }, { present: ear-change } ] }",
        "{ all: [ { present: ear-change }, { absent: low-ear } ] }",
        "{ any: [ { present: low-ear }, { present: breech } ] }",
        "{ at-least: 2, of: [ { measured: width, mm: { above: 5 } }, { present: low-ear }, { sex: "
        "male } ] }",
    };
    std::vector<std::string> const asked{
        "{ present: dimple }", "{ absent: dimple }", "{ tally: majors, at-least: 1 }",
        "{ any: [ { present: dimple }, { measured: width, mm: { above: 5 } } ] }"};
    for (auto const& condition : conditions) {
        for (auto const& line : class_lines("dimple")) {
            for (auto const& when : asked) {
                auto text = fmt::format("{}{}classes:\n{}{}derived:\n", header, keys, line,
                                        class_line("ear-change", "minor-variant", "ear"));
                text += fmt::format(
                    "  - {{ derive: dimple, when: {}, because: x, sources: [common-practice] "
                    "}}\nrules:\n",
                    condition);
                text += rule("asked", when, "{ service: genetics, urgency: urgent }");
                visit({text, axes_of(condition + when)});
            }
        }
    }
}

}  // namespace asterism::oracle
