// SPDX-License-Identifier: MIT
#include "render/handbook_parts.h"

namespace asterism {

namespace {

/// Up to so many things a group is told in one sentence.
constexpr std::size_t most_in_a_sentence = 5;

std::size_t leaves(Condition const& condition) {
    std::size_t count = 0;
    for (auto const& child : condition.children()) count += leaves(*child);
    return condition.children().empty() ? 1 : count;
}

bool flat(Condition const& condition) {
    for (auto const& child : condition.children()) {
        if (!child->children().empty()) return false;
    }
    return true;
}

bool in_one_sentence(Condition const& condition) {
    auto const count = leaves(condition);
    return flat(condition) ? count <= 2 * most_in_a_sentence : count <= most_in_a_sentence;
}

/// The words of a condition without the brackets around the whole.
std::string without_brackets(std::string text) {
    if (text.size() < 2 || text.front() != '(' || text.back() != ')') return text;
    int depth = 0;
    for (std::size_t i = 0; i + 1 < text.size(); ++i) {
        depth += text[i] == '(' ? 1 : text[i] == ')' ? -1 : 0;
        if (depth == 0) return text;  // the first bracket closes before the end
    }
    return text.substr(1, text.size() - 2);
}

std::string opening(Condition const& condition, std::string const& words) {
    auto const kind = condition.kind();
    if (kind == "all") return "all of these";
    if (kind == "any") return "any of these";
    if (kind == "none") return "none of these";
    return words.substr(0, words.find(" of ")) + " of these";
}

}  // namespace

HandbookClause clause_of(Condition const& condition, Vocabulary const& vocabulary) {
    auto const words = condition.describe(vocabulary);
    if (in_one_sentence(condition)) return {without_brackets(words), {}};
    HandbookClause clause{opening(condition, words), {}};
    for (auto const& child : condition.children()) {
        clause.parts.push_back(clause_of(*child, vocabulary));
    }
    return clause;
}

}  // namespace asterism
