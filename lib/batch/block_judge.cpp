// SPDX-License-Identifier: MIT
#include "batch/block_judge.h"

#include <algorithm>

#include "assess/assess.h"
#include "assess/changes.h"
#include "cases/read_case.h"
#include "yaml/read.h"

namespace asterism::batch {

namespace {

/// So many cases are judged at once, where a block has as many.
constexpr std::size_t most_waiting = 8 * Lanes::count;

bool blank(std::string_view line) {
    return line.find_first_not_of(" \t\r") == std::string_view::npos;
}

}  // namespace

void BlockResult::clear() {
    out.clear();
    refused.clear();
    cases = lines = 0;
    counts_lines = true;
}

BlockJudge::BlockJudge(BatchPlan const& plan) : plan_(plan), reader_(*plan.book().ontology) {
    if (!plan.explain) fast_.emplace(plan.fast);
    waiting_.reserve(most_waiting);
}

void BlockJudge::judge(Block const& block, BlockResult& result) {
    result.clear();
    result.counts_lines = block.counts_lines;
    for (auto const& problem : block.problems) {
        Diagnostics diagnostics;
        diagnostics.error(problem.code, {}, problem.message);
        result.refused.push_back({problem.line, plan_.writer.refused("", diagnostics, {})});
    }
    result.lines = block.counts_lines ? block.problems.size() : 0;
    auto text = block.text();
    for (std::size_t index = 0; !text.empty(); ++index) {
        auto const end = std::min(text.find('\n'), text.size());
        auto const number = block.counts_lines ? ++result.lines : block.numbers[index];
        line(text.substr(0, end), number, result);
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    answer_waiting(result);
    std::stable_sort(result.refused.begin(), result.refused.end(),
                     [](Refused const& a, Refused const& b) { return a.line < b.line; });
}

void BlockJudge::line(std::string_view text, std::uint64_t number, BlockResult& result) {
    if (text.ends_with('\r')) text.remove_suffix(1);
    bool const plain = fast_ && reader_.read(text, next());
    if (!plain) return blank(text) ? void() : in_full(text, number, result);
    keep(result);
}

FastCase& BlockJudge::next() {
    if (count_ == waiting_.size())
        waiting_.emplace_back().steps = StepSet(plan_.book().ontology->steps.size());
    return waiting_[count_];
}

void BlockJudge::keep(BlockResult& result) {
    ++result.cases;
    if (++count_ == most_waiting) answer_waiting(result);
}

void BlockJudge::answer_waiting(BlockResult& result) {
    if (count_ == 0) return;
    auto const babies = std::span(waiting_).first(count_);
    auto const answers = fast_->judge(babies);
    for (std::size_t i = 0; i < babies.size(); ++i)
        plan_.writer.answer(babies[i].id, answers[i], result.out);
    count_ = 0;
}

void BlockJudge::in_full(std::string_view text, std::uint64_t number, BlockResult& result) {
    Diagnostics diagnostics;
    auto const source = make_source(plan_.name, std::string(text));
    auto const node = yaml::read_json(source, diagnostics);
    auto const& ontology = *plan_.book().ontology;
    auto const baby = node ? read_case(*node, ontology, diagnostics) : empty_case(ontology);
    if (!diagnostics.has_errors()) return answer_in_full(baby, result);
    bool const flags = !baby.present.empty() || !baby.measures.empty();
    auto const red = flags ? recognised_red_flags(plan_.book(), baby) : std::vector<Evidence>{};
    result.refused.push_back({number, plan_.writer.refused(baby.id.text, diagnostics, red)});
}

void BlockJudge::answer_in_full(Case const& baby, BlockResult& result) {
    if (fast_) {
        copy(baby, next());
        return keep(result);
    }
    ++result.cases;
    plan_.writer.explained(assess(plan_.book(), baby, ChangesTold::all), result.out);
}

}  // namespace asterism::batch
