// SPDX-License-Identifier: MIT
#include "batch/fast_book.h"

#include <algorithm>

namespace asterism::batch {

namespace {

Lists<FindingId> below_each(Ontology const& ontology) {
    std::vector<std::vector<FindingId>> lists;
    for (FindingId id = 0; id < ontology.findings.size(); ++id)
        lists.push_back(ontology.descendants(id));
    return Lists<FindingId>(lists);
}

Lists<FindingId> by_step(Ontology const& ontology) {
    std::vector<std::vector<FindingId>> lists(ontology.steps.size());
    for (FindingId id = 0; id < ontology.findings.size(); ++id)
        lists[ontology.at(id).step].push_back(id);
    return Lists<FindingId>(lists);
}

/// What `examined: all` means: the history and the results of tests stand apart.
std::vector<bool> exam_steps(Ontology const& ontology) {
    std::vector<bool> done;
    for (auto const& step : ontology.steps)
        done.push_back(!ontology.regions[step.region].history && !step.result);
    return done;
}

}  // namespace

std::optional<FastBook> FastBook::make(CompiledRulebook const& book) {
    auto circuit = FastCircuit::make(book);
    if (!circuit) return std::nullopt;
    return FastBook(book, std::move(*circuit));
}

FastBook::FastBook(CompiledRulebook const& book, FastCircuit circuit)
    : book_(&book),
      circuit_(std::move(circuit)),
      descendants_(below_each(*book.ontology)),
      of_step_(by_step(*book.ontology)),
      no_steps_(book.ontology->steps.size()),
      all_steps_(exam_steps(*book.ontology)),
      all_done_(exam_steps(*book.ontology)) {
    for (FindingId id = 0; id < book.present.size(); ++id) note(id);
    take_snapshots();
}

void FastBook::note(FindingId id) {
    auto const& finding = ontology().at(id);
    auto const facts = circuit_.facts_of(id);
    briefs_.push_back(
        {finding.step, finding.sex, finding.history, ontology().region_of(id).history});
    if (book_->derived[id] && !book_->derived[id]->tests.empty()) measured_.push_back(id);
    if (finding.sex != Sex::not_given) {
        of_one_sex_[0].push_back(id);
        if (!all_done_[finding.step]) of_one_sex_[1].push_back(id);
    }
    bool const asked = std::any_of(facts.begin(), facts.end(), [](FindingFact const& fact) {
        return fact.kind != Fact::Kind::history_assumed && fact.kind != Fact::Kind::familial;
    });
    if (briefs_.back().history_region && asked) essential_history_.push_back(id);
}

void FastBook::take_snapshots() {
    for (std::size_t start = 0; start < starts; ++start) {
        Case baby;
        baby.step_done = start == 0 ? std::vector<bool>(all_done_.size(), false) : all_done_;
        for (auto const rest : {Rest::unknown, Rest::normal})
            snapshots_.push_back(circuit_.snapshot(evaluate(*book_, baby, rest).values));
    }
}

std::size_t FastBook::nearest(FastCase const& baby) const {
    return all_steps_.distance(baby.steps) < no_steps_.distance(baby.steps) ? 1 : 0;
}

}  // namespace asterism::batch
