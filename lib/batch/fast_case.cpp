// SPDX-License-Identifier: MIT
#include "batch/fast_case.h"

namespace asterism::batch {

StepSet::StepSet(std::vector<bool> const& done) : StepSet(done.size()) {
    for (std::size_t step = 0; step < done.size(); ++step) {
        if (done[step]) words_[step / 64] |= 1ull << step % 64;
    }
}

void StepSet::add(StepSet const& other) {
    for (std::size_t i = 0; i < words_.size(); ++i) words_[i] |= other.words_[i];
}

void StepSet::remove(StepSet const& other) {
    for (std::size_t i = 0; i < words_.size(); ++i) words_[i] &= ~other.words_[i];
}

StepSet StepSet::difference(StepSet other) const {
    for (std::size_t i = 0; i < words_.size(); ++i) other.words_[i] ^= words_[i];
    return other;
}

std::size_t StepSet::size() const {
    std::size_t result = 0;
    for (auto const word : words_) result += static_cast<std::size_t>(std::popcount(word));
    return result;
}

void FastCase::clear() {
    id.clear();
    sex = Sex::not_given;
    history_none = false;
    gestation.reset();
    age.reset();
    steps.clear();
    statements.clear();
    measures.clear();
}

namespace {

void copy(std::vector<Statement> const& list, Stated stated, FastCase& target) {
    for (auto const& s : list) {
        target.statements.push_back(
            {s.finding, s.grade.value_or(FastStatement::no_grade), stated, s.sides, s.familial});
    }
}

}  // namespace

void copy(Case const& baby, FastCase& target) {
    target.clear();
    target.id = baby.id.text;
    target.sex = baby.sex;
    target.history_none = baby.history_none;
    target.gestation = baby.gestation;
    target.age = baby.age;
    target.steps = StepSet(baby.step_done);
    copy(baby.present, Stated::present, target);
    copy(baby.absent, Stated::absent, target);
    copy(baby.unsure, Stated::unsure, target);
    target.measures = baby.measures;
}

}  // namespace asterism::batch
