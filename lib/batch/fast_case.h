// SPDX-License-Identifier: MIT
#pragma once

#include <bit>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "cases/case.h"

namespace asterism::batch {

/// A set of exam steps, by StepId.
class StepSet {
public:
    explicit StepSet(std::size_t steps = 0) : words_((steps + 63) / 64, 0) {}
    explicit StepSet(std::vector<bool> const& done);

    bool has(StepId step) const { return (words_[step / 64] >> step % 64 & 1u) != 0; }
    void clear() { words_.assign(words_.size(), 0); }
    void add(StepSet const& other);
    void remove(StepSet const& other);
    friend bool operator==(StepSet const&, StepSet const&) = default;
    /// The steps in which two sets differ.
    StepSet difference(StepSet other) const;
    std::size_t size() const;
    /// Calls `visit` with each step.
    template <class Visit>
    void each(Visit visit) const {
        for (std::size_t word = 0; word < words_.size(); ++word) {
            for (auto set = words_[word]; set != 0; set &= set - 1)
                visit(static_cast<StepId>(word * 64 +
                                          static_cast<std::size_t>(std::countr_zero(set))));
        }
    }

private:
    std::vector<std::uint64_t> words_;
};

enum class Stated : std::uint8_t { present = 1, absent = 2, unsure = 4 };

/// A Statement without the words it was written in.
struct FastStatement {
    static constexpr std::uint32_t no_grade = UINT32_MAX;

    FindingId finding = 0;
    std::uint32_t grade = no_grade;
    Stated stated = Stated::present;
    Sides sides = Sides::not_said;
    bool familial = false;
};

/// What verdicts need of a case, without text or places; made to be filled again and again.
struct FastCase {
    std::string id;
    Sex sex = Sex::not_given;
    bool history_none = false;
    std::optional<Gestation> gestation;
    std::optional<Duration> age;
    StepSet steps;
    std::vector<FastStatement> statements;
    std::vector<MeasuredValue> measures;

    void clear();
};

/// The same from a case that was read in full.
void copy(Case const& baby, FastCase& target);

}  // namespace asterism::batch
