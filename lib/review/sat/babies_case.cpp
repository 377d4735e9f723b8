// SPDX-License-Identifier: MIT
// From a model of the clauses back to a case that a person can read and the engine can judge.
#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "assess/measure_values.h"
#include "base/number.h"
#include "review/sat/babies.h"

namespace asterism::sat {

class CaseFromModel {
public:
    explicit CaseFromModel(Babies const& babies)
        : babies_(babies), solver_(babies.solver_), ontology_(babies.ontology_) {}

    std::optional<Case> read(std::vector<Lit>& blocked) {
        baby_.id.text = "counterexample";
        read_sex_and_times();
        for (StepId step = 0; step < ontology_.steps.size(); ++step)
            baby_.step_done.push_back(solver_.value(babies_.done_[step]));
        for (FindingId id = 0; id < ontology_.findings.size(); ++id) read_finding(id);
        for (auto const& [measure, groups] : babies_.measures_) {
            if (!read_measure(measure, groups)) {
                block(groups, blocked);
                return std::nullopt;
            }
        }
        return std::move(baby_);
    }

private:
    using Group = Babies::Group;

    Truth value(FactKey const& key) const { return value_of(babies_.facts_.at(key), solver_); }

    std::size_t chosen(Group const& group) const {
        for (std::size_t i = 0; i < group.chosen.size(); ++i) {
            if (solver_.value(group.chosen[i])) return i;
        }
        return 0;
    }

    void read_sex_and_times() {
        auto const sex = babies_.sex_ ? chosen(*babies_.sex_) : 0;
        baby_.sex = sex == 1 ? Sex::female : sex == 2 ? Sex::male : Sex::not_given;
        if (babies_.age_)
            read_time(*babies_.age_, ages_to_try(ranges(*babies_.age_)), baby_.age,
                      [](Duration age) { return std::pair<double, double>(age.hours, age.hours); });
        if (babies_.gestation_)
            read_time(*babies_.gestation_, gestations_to_try(), baby_.gestation,
                      [](Gestation gestation) {
                          return std::pair<double, double>(gestation.min_days, gestation.max_days);
                      });
    }

    static std::vector<Range> ranges(Group const& group) {
        std::vector<Range> result;
        for (auto const& key : group.keys) result.push_back(key.range);
        return result;
    }

    template <class T, class Ends>
    void read_time(Group const& group, std::vector<T> const& values, std::optional<T>& target,
                   Ends const& ends) const {
        auto const& pattern = group.patterns[chosen(group)];
        bool const nothing = std::all_of(pattern.begin(), pattern.end(),
                                         [](Truth t) { return t == Truth::unknown; });
        if (nothing) return;
        for (auto const& value : values) {
            auto const [from, to] = ends(value);
            bool fits = true;
            for (std::size_t i = 0; i < pattern.size(); ++i)
                fits = fits && group.keys[i].range.contains(from, to) == pattern[i];
            if (!fits) continue;
            target = value;
            return;
        }
    }

    Statement statement(FindingId id, Sides sides = Sides::not_said) const {
        Statement result;
        result.finding = id;
        result.as_written.text = ontology_.at(id).id.text;
        result.sides = sides;
        return result;
    }

    /// The truth of a fact about a finding; `otherwise` when no book asks for it.
    Truth detail(Fact::Kind kind, FindingId id, Truth otherwise) const {
        auto const* truth = babies_.find({kind, id, 0, {}, {}});
        return truth ? value_of(*truth, solver_) : otherwise;
    }

    void read_finding(FindingId id) {
        auto const own = value_of(babies_.own_[id], solver_);
        if (own == Truth::yes) return read_present(id);
        bool const done = baby_.step_done[ontology_.at(id).step];
        if (own == Truth::no) {
            if (!done && !ruled_out(id)) baby_.absent.push_back(statement(id));
            return;
        }
        if (detail(Fact::Kind::left, id, own) == Truth::no && !ontology_.at(id).history)
            return baby_.absent.push_back(statement(id, Sides::left));
        if (detail(Fact::Kind::right, id, own) == Truth::no && !ontology_.at(id).history)
            return baby_.absent.push_back(statement(id, Sides::right));
        if (done || babies_.measure_can_decide(id)) baby_.unsure.push_back(statement(id));
    }

    /// Absent because of the sex or a measure, without being stated so.
    bool ruled_out(FindingId id) const {
        auto const below = ontology_.descendants(id);
        bool const open_below = std::any_of(below.begin(), below.end(), [&](FindingId b) {
            return solver_.value(babies_.own_[b].possible);
        });
        auto const sex = ontology_.at(id).sex;
        return open_below ||
               (sex != Sex::not_given && baby_.sex != Sex::not_given && sex != baby_.sex);
    }

    void read_present(FindingId id) {
        auto present = statement(id);
        auto const left = detail(Fact::Kind::left, id, Truth::unknown);
        auto const right = detail(Fact::Kind::right, id, Truth::unknown);
        if (left == Truth::yes) present.sides = present.sides | Sides::left;
        if (right == Truth::yes) present.sides = present.sides | Sides::right;
        bool const done = baby_.step_done[ontology_.at(id).step];
        bool const implied = done && present.sides != Sides::not_said;
        if (left == Truth::no && !implied) baby_.absent.push_back(statement(id, Sides::left));
        if (right == Truth::no && !implied) baby_.absent.push_back(statement(id, Sides::right));
        present.familial = detail(Fact::Kind::familial, id, Truth::no) == Truth::yes;
        read_grade(id, present);
        baby_.present.push_back(std::move(present));
    }

    void read_grade(FindingId id, Statement& present) const {
        for (std::uint32_t grade = 0; grade < ontology_.at(id).grades.size(); ++grade) {
            auto const* asked = babies_.find({Fact::Kind::grade, id, grade, {}, {}});
            if (asked && value_of(*asked, solver_) == Truth::yes) present.grade = grade;
            if (asked && value_of(*asked, solver_) == Truth::no)
                present.grade = present.grade ? present.grade : unasked_grade(id);
        }
    }

    std::optional<std::uint32_t> unasked_grade(FindingId id) const {
        for (std::uint32_t grade = 0; grade < ontology_.at(id).grades.size(); ++grade) {
            if (!babies_.find({Fact::Kind::grade, id, grade, {}, {}})) return grade;
        }
        return std::nullopt;
    }

    /// What the facts of a scale are in the model, against what a number makes them.
    static bool agrees(FactKey const& key, bool read, Truth wanted,
                       std::vector<MeasureReading> const& readings) {
        auto const found = value_of(key.test, readings);
        if (found.has_value() != read) return false;
        switch (key.kind) {
            case Fact::Kind::measure_by_eye: return found.value_or(Truth::no) == wanted;
            case Fact::Kind::measure_red_flag:
                return truth(found.value_or(Truth::no) != Truth::no) == wanted;
            default: return found.value_or(Truth::unknown) == wanted;
        }
    }

    bool fits(std::vector<Group> const& groups, std::vector<MeasureReading> const& readings) const {
        for (auto const& group : groups) {
            bool const read = chosen(group) != 0;
            for (auto const& key : group.keys) {
                if (!agrees(key, read, value(key), readings)) return false;
            }
        }
        return true;
    }

    bool read_measure(MeasureId id, std::vector<Group> const& groups) {
        if (fits(groups, {})) return true;
        auto const& measure = ontology_.measures[id];
        double const step = step_of(measure);
        for (double number = measure.plausible.from; number <= measure.plausible.to + step / 2;
             number += step) {
            Case alone = baby_;
            alone.measures = {measured(id, number, step)};
            if (!fits(groups, read_margins(ontology_, *babies_.books_.front()->standards, alone)))
                continue;
            baby_.measures.push_back(alone.measures.front());
            return true;
        }
        return false;
    }

    static double step_of(Measure const& measure) {
        constexpr double most_tries = 4000;
        double const span = measure.plausible.to - measure.plausible.from;
        double step = measure.resolution > 0 ? measure.resolution : 0.1;
        while (span / step < 200) step /= 10;
        while (span / step > most_tries) step *= 10;
        return step;
    }

    static MeasuredValue measured(MeasureId id, double number, double step) {
        constexpr double thousand = 1000;
        MeasuredValue result;
        result.measure = id;
        result.value = std::round(number * thousand) / thousand;
        result.step = step;
        return result;
    }

    void block(std::vector<Group> const& groups, std::vector<Lit>& blocked) const {
        auto const leave_out = [&](Group const& group) {
            blocked.push_back(-group.chosen[chosen(group)]);
        };
        for (auto const& group : groups) leave_out(group);
        if (babies_.sex_) leave_out(*babies_.sex_);
        if (babies_.age_) leave_out(*babies_.age_);
        if (babies_.gestation_) leave_out(*babies_.gestation_);
    }

    Babies const& babies_;
    Solver const& solver_;
    Ontology const& ontology_;
    Case baby_;
};

std::optional<Case> Babies::realise(std::vector<Lit>& blocked) const {
    return CaseFromModel(*this).read(blocked);
}

}  // namespace asterism::sat
