// SPDX-License-Identifier: MIT
#include "batch/fast_book.h"

namespace asterism::batch {

namespace {

Lists<FindingId> below_each(Ontology const& ontology) {
    std::vector<std::vector<FindingId>> lists;
    for (FindingId id = 0; id < ontology.findings.size(); ++id)
        lists.push_back(ontology.descendants(id));
    return Lists<FindingId>(lists);
}

/// The history and the results of tests stand apart.
std::vector<bool> steps_of_the_exam(Ontology const& ontology) {
    std::vector<bool> done;
    for (auto const& step : ontology.steps)
        done.push_back(!ontology.regions[step.region].history && !step.result);
    return done;
}

}  // namespace

FastBook::FastBook(CompiledRulebook const& book)
    : book_(&book),
      circuit_(book),
      descendants_(below_each(*book.ontology)),
      exam_steps_(steps_of_the_exam(*book.ontology)) {
    for (FindingId id = 0; id < book.present.size(); ++id) note(id);
}

void FastBook::note(FindingId id) {
    auto const& finding = ontology().at(id);
    briefs_.push_back(
        {finding.step, finding.sex, finding.history, ontology().region_of(id).history});
    if (book_->derived[id] && !book_->derived[id]->tests.empty()) measured_.push_back(id);
}

}  // namespace asterism::batch
