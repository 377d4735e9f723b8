// SPDX-License-Identifier: MIT
#pragma once

#include "batch/fast_case.h"
#include "batch/text_table.h"

namespace asterism::batch {

/// What the words of cases mean, asked of the full readers once and then remembered. An answer of
/// null says that the full reader would object (or that there is doubt, as with escapes): the line
/// is then read in full. Texts are as they stand between the quotes. One thread's own.
class Meanings {
public:
    explicit Meanings(Ontology const& ontology) : ontology_(ontology) {}

    FindingId const* finding(std::string_view name);
    Gestation const* gestation(std::string_view text);
    Duration const* duration(std::string_view text);
    Date const* date(std::string_view text);
    /// The steps that `examined: name` marks as done.
    StepSet const* steps(std::string_view name);
    /// The steps that `except: name` takes out.
    StepSet const* exceptions(std::string_view name);
    MeasuredValue const* measure(std::string_view name, std::string_view value);

private:
    template <class T, class Ask>
    T const* remembered(TextTable<T>& table, T& last, std::string_view text, Ask ask);
    std::optional<StepSet> ask_steps(std::string_view name, bool except) const;

    Ontology const& ontology_;
    TextTable<FindingId> findings_;
    TextTable<Gestation> gestations_;
    TextTable<Duration> durations_;
    TextTable<Date> dates_;
    TextTable<StepSet> steps_;
    TextTable<StepSet> exceptions_;
    TextTable<MeasuredValue> measures_;
    std::string measure_key_;
    // The last answer that there was no room to remember.
    FindingId finding_ = 0;
    Gestation gestation_;
    Duration duration_;
    Date date_{};
    StepSet step_set_;
    MeasuredValue measured_;
};

}  // namespace asterism::batch
