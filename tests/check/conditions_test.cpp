// SPDX-License-Identifier: MIT
// Parts of conditions that no baby meets or that never decide, against every case of four findings.
#include "review/check_conditions.h"

#include <random>
#include <set>

#include "assess/facts.h"
#include "support/small_book.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

/// A random condition as text, and where its parts stand in it.
struct Tree {
    std::string kind;  ///< all, any, none; or present, absent
    std::string finding;
    std::vector<Tree> parts;

    std::string text() const {
        if (parts.empty()) return "{ " + kind + ": " + finding + " }";
        std::string list;
        for (auto const& part : parts) list += (list.empty() ? "" : ", ") + part.text();
        return "{ " + kind + ": [ " + list + " ] }";
    }
};

class Random {
public:
    explicit Random(unsigned seed) : engine_(seed) {}

    Tree tree(int depth) {
        Tree tree;
        if (depth == 0 || below(3) == 0) {
            tree.kind = below(4) == 0 ? "absent" : "present";
            tree.finding = findings[below(4)];
            return tree;
        }
        tree.kind = std::array{"all", "any", "none"}[below(3)];
        for (auto n = 2 + below(2); n > 0; --n) tree.parts.push_back(this->tree(depth - 1));
        return tree;
    }

    static constexpr std::array findings{"slant", "fold", "nubbin", "crease"};

private:
    unsigned below(unsigned n) { return static_cast<unsigned>(engine_() % n); }
    std::mt19937 engine_;
};

/// The rule's truth for each of the 81 cases.
std::vector<Truth> answers(std::string const& when) {
    auto const book = small_book(rule("r", when, "genetics", "urgent"));
    std::vector<Truth> result;
    for (int code = 0; code < 81; ++code) {
        std::string present, absent;
        int rest = code;
        for (std::string const finding : Random::findings) {
            if (rest % 3 == 1) present += finding + ", ";
            if (rest % 3 == 2) absent += finding + ", ";
            rest /= 3;
        }
        auto const one = baby(book, "findings: [" + present + "]\nabsent: [" + absent + "]\n");
        result.push_back(
            value_of(book.rules[0].when.literal, evaluate(book, one, Rest::unknown).values));
    }
    return result;
}

bool any_yes(std::vector<Truth> const& truths) {
    return std::find(truths.begin(), truths.end(), Truth::yes) != truths.end();
}

bool has_twin(Tree const& tree, std::size_t at) {
    // Two spellings of one condition share their node in the circuit; here equal text is enough.
    for (std::size_t i = 0; i < tree.parts.size(); ++i) {
        if (i != at && answers(tree.parts[i].text()) == answers(tree.parts[at].text())) return true;
    }
    return false;
}

/// `code offset` of what must be told of the parts of a node, found by going through all cases.
/// Parts that have a twin are left out: how they are told depends on the circuit.
void expect(Tree const& root, Tree& node, std::size_t offset, std::set<std::string>& told,
            std::set<std::size_t>& open) {
    auto at = offset + ("{ " + node.kind + ": [ ").size();
    auto const whole = answers(root.text());
    for (std::size_t i = 0; i < node.parts.size(); ++i) {
        auto const size = node.parts[i].text().size();
        if (!any_yes(answers(node.parts[i].text()))) {
            told.insert("never-met " + std::to_string(at));
        } else if (has_twin(node, i)) {
            open.insert(at);
        } else {
            auto const part = node.parts[i];
            node.parts.erase(node.parts.begin() + static_cast<std::ptrdiff_t>(i));
            if (!node.parts.empty() && answers(root.text()) == whole)
                told.insert("never-decisive " + std::to_string(at));
            node.parts.insert(node.parts.begin() + static_cast<std::ptrdiff_t>(i), part);
        }
        if (!node.parts[i].parts.empty()) expect(root, node.parts[i], at, told, open);
        at += size + 2;
    }
}

std::set<std::string> found(std::string const& when, std::set<std::size_t> const& open) {
    auto const text = rule("r", when, "genetics", "urgent");
    auto const begin = (small_book_head + "rules:\n").size() + text.find(when);
    Diagnostics diagnostics;
    check_conditions(small_book(text), diagnostics);
    std::set<std::string> result;
    for (auto const& d : diagnostics.sorted()) {
        auto const offset = d.span.begin - begin;
        if (open.contains(offset) && d.code == "never-decisive") continue;
        result.insert(d.code + " " + std::to_string(offset));
    }
    return result;
}

}  // namespace

TEST_CASE("what is told of random conditions is what going through all cases shows") {
    Random random(20);
    int with_something = 0;
    for (int round = 0; round < 60; ++round) {
        auto tree = random.tree(2);
        auto const when = tree.text();
        INFO(when);
        std::set<std::string> expected;
        std::set<std::size_t> open;
        if (any_yes(answers(when))) expect(tree, tree, 0, expected, open);
        CHECK(found(when, open) == expected);
        with_something += expected.empty() ? 0 : 1;
    }
    CHECK(with_something >= 10);
}

TEST_CASE("a general finding beside its special one decides nothing") {
    CHECK(found("{ all: [ { present: opaque }, { present: lens } ] }", {}) ==
          std::set<std::string>{"never-decisive 30"});
    CHECK(found("{ any: [ { present: opaque }, { present: lens } ] }", {}) ==
          std::set<std::string>{"never-decisive 9"});
    CHECK(found("{ all: [ { present: opaque }, { present: slant } ] }", {}).empty());
}

TEST_CASE("a condition that everybody meets is told at its place") {
    CHECK(found("{ tally: minors, at-most: 3 }", {}) ==
          std::set<std::string>{"always-fires 0"});  // there are three keys
    CHECK(found("{ tally: minors, at-most: 2 }", {}).empty());
}

TEST_CASE("without time nothing is said") {
    Diagnostics diagnostics;
    auto const book = small_book(
        rule("r", "{ all: [ { present: opaque }, { present: lens } ] }", "genetics", "urgent"));
    check_conditions(book, diagnostics, {1, std::chrono::milliseconds(0)});
    CHECK(diagnostics.empty());
}
