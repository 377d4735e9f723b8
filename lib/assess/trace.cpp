// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "assess/assess.h"
#include "assess/evidence.h"

namespace asterism {

namespace {

std::string seen(Evidence const& evidence) {
    switch (evidence.kind) {
        case Evidence::Kind::finding:
            if (evidence.how == "stated")
                return fmt::format("stated {}: {}", evidence.state, evidence.as_written);
            if (evidence.state == "unknown") return "not examined";
            return evidence.how.empty() ? evidence.state
                                        : fmt::format("{} ({})", evidence.state, evidence.how);
        case Evidence::Kind::tally: return evidence.value;
        case Evidence::Kind::measure:
            return evidence.value.empty() ? "not measured" : evidence.value;
        case Evidence::Kind::constellation: return {};
        case Evidence::Kind::fact: return evidence.value.empty() ? "not given" : evidence.value;
    }
    return {};
}

void add_lines(CompiledCondition const& condition, EvidenceReader const& reader, int depth,
               std::vector<TraceLine>& lines) {
    TraceLine line;
    line.depth = depth;
    line.value = reader.value(condition.literal);
    line.place = condition.condition->span().place();
    bool const is_leaf = condition.children.empty();
    line.text = is_leaf ? condition.condition->describe(reader.vocabulary())
                        : std::string(condition.condition->kind());
    if (is_leaf) line.seen = seen(reader.leaf(condition));
    lines.push_back(std::move(line));
    for (auto const& child : condition.children) add_lines(child, reader, depth + 1, lines);
}

}  // namespace

std::vector<TraceLine> trace(CompiledRulebook const& book, Case const& baby,
                             std::string_view rule) {
    auto const facts = evaluate(book, baby, Rest::unknown);
    EvidenceReader const reader(book, baby, facts);
    std::vector<TraceLine> lines;
    for (auto const& compiled : book.rules) {
        if (book.syntax(compiled).id.text == rule) add_lines(compiled.when, reader, 0, lines);
    }
    return lines;
}

}  // namespace asterism
