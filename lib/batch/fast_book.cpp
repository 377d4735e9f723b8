// SPDX-License-Identifier: MIT
#include "batch/fast_book.h"

namespace asterism::batch {

namespace {

Lists<FindingId> by_finding(Ontology const& ontology,
                            std::vector<FindingId> (Ontology::*related)(FindingId) const) {
    std::vector<std::vector<FindingId>> lists;
    for (FindingId id = 0; id < ontology.findings.size(); ++id)
        lists.push_back((ontology.*related)(id));
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

std::size_t sex_number(Sex sex) { return sex == Sex::female ? 1 : sex == Sex::male ? 2 : 0; }

}  // namespace

std::optional<FastBook> FastBook::make(CompiledRulebook const& book) {
    auto circuit = FastCircuit::make(book);
    if (!circuit) return std::nullopt;
    return FastBook(book, std::move(*circuit));
}

FastBook::FastBook(CompiledRulebook const& book, FastCircuit circuit)
    : book_(&book),
      circuit_(std::move(circuit)),
      descendants_(by_finding(*book.ontology, &Ontology::descendants)),
      ancestors_(by_finding(*book.ontology, &Ontology::ancestors)),
      of_step_(by_step(*book.ontology)),
      no_steps_(book.ontology->steps.size()),
      all_steps_(exam_steps(*book.ontology)),
      all_done_(exam_steps(*book.ontology)) {
    for (FindingId id = 0; id < book.present.size(); ++id) {
        history_region_.push_back(book.ontology->region_of(id).history ? 1 : 0);
        if (book.derived[id] && !book.derived[id]->tests.empty()) measured_.push_back(id);
    }
    take_snapshots();
}

Case FastBook::plainest(std::size_t start) const {
    Case baby;
    baby.step_done = start % 2 == 0 ? std::vector<bool>(all_done_.size(), false) : all_done_;
    baby.history_none = start / 2 % 2 == 1;
    baby.sex = start / 4 == 1 ? Sex::female : start / 4 == 2 ? Sex::male : Sex::not_given;
    return baby;
}

void FastBook::take_snapshots() {
    for (std::size_t start = 0; start < starts; ++start) {
        auto const baby = plainest(start);
        for (auto const rest : {Rest::unknown, Rest::normal})
            snapshots_.push_back(circuit_.snapshot(evaluate(*book_, baby, rest).values));
    }
}

std::size_t FastBook::nearest(FastCase const& baby) const {
    bool const all = all_steps_.distance(baby.steps) < no_steps_.distance(baby.steps);
    return sex_number(baby.sex) * 4 + (baby.history_none ? 2 : 0) + (all ? 1 : 0);
}

}  // namespace asterism::batch
