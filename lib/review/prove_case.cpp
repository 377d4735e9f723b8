// SPDX-License-Identifier: MIT
#include "review/prove_case.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/number.h"

namespace asterism {

namespace {

using Statements = std::vector<Statement> Case::*;

void drop(Case& baby, Statements list, FindingId finding) {
    std::erase_if(baby.*list, [&](Statement const& s) { return s.finding == finding; });
}

bool states(Case const& baby, Statements list, FindingId finding) {
    return std::any_of((baby.*list).begin(), (baby.*list).end(),
                       [&](Statement const& s) { return s.finding == finding; });
}

bool stated_absent(Case const& baby, FindingId finding) {
    Sides sides = Sides::not_said;
    for (auto const& statement : baby.absent) {
        if (statement.finding != finding) continue;
        if (statement.sides == Sides::not_said) return true;
        sides = sides | statement.sides;
    }
    return sides == Sides::both;
}

bool said(Case const& baby, FindingId finding) {
    return states(baby, &Case::present, finding) || states(baby, &Case::absent, finding) ||
           states(baby, &Case::unsure, finding);
}

Statement plain(Ontology const& ontology, FindingId finding) {
    Statement statement;
    statement.finding = finding;
    statement.as_written.text = ontology.at(finding).id.text;
    return statement;
}

class Shrinker {
public:
    Shrinker(Case baby, std::function<bool(Case const&)> const& wanted)
        : baby_(std::move(baby)), wanted_(wanted) {}

    Case run() {
        for (bool again = true; again;) {
            again = false;
            for (auto const list : {&Case::unsure, &Case::absent, &Case::present}) {
                again = shorten(list) || again;
            }
            again = shorten(&Case::measures) || again;
            again = say_less() || again;
            again = undo_steps() || again;
            again = forget() || again;
        }
        return std::move(baby_);
    }

private:
    bool keep(Case tried) {
        if (!wanted_(tried)) return false;
        baby_ = std::move(tried);
        return true;
    }

    template <class T>
    bool shorten(std::vector<T> Case::*list) {
        bool changed = false;
        if (!(baby_.*list).empty()) {
            auto without = baby_;
            (without.*list).clear();
            changed = keep(std::move(without));
        }
        for (std::size_t i = (baby_.*list).size(); i-- > 0;) {
            auto without = baby_;
            (without.*list).erase((without.*list).begin() + static_cast<std::ptrdiff_t>(i));
            changed = keep(std::move(without)) || changed;
        }
        return changed;
    }

    /// Family, side and grade of what is present.
    bool say_less() {
        bool changed = false;
        for (std::size_t i = 0; i < baby_.present.size(); ++i) {
            auto const& statement = baby_.present[i];
            auto less = baby_;
            if (statement.familial) {
                less.present[i].familial = false;
            } else if (statement.sides != Sides::not_said) {
                less.present[i].sides = Sides::not_said;
            } else if (statement.grade) {
                less.present[i].grade.reset();
            } else {
                continue;
            }
            changed = keep(std::move(less)) || changed;
        }
        return changed;
    }

    bool undo_steps() {
        bool changed = false;
        for (std::size_t step = 0; step < baby_.step_done.size(); ++step) {
            if (!baby_.step_done[step]) continue;
            auto without = baby_;
            without.step_done[step] = false;
            changed = keep(std::move(without)) || changed;
        }
        return changed;
    }

    bool forget() {
        bool changed = false;
        auto const forget_one = [&](bool known, auto const& change) {
            auto without = baby_;
            change(without);
            changed = (known && keep(std::move(without))) || changed;
        };
        forget_one(baby_.sex != Sex::not_given, [](Case& c) { c.sex = Sex::not_given; });
        forget_one(baby_.age.has_value(), [](Case& c) { c.age.reset(); });
        forget_one(baby_.gestation.has_value(), [](Case& c) { c.gestation.reset(); });
        return changed;
    }

    Case baby_;
    std::function<bool(Case const&)> const& wanted_;
};

class CaseWriter {
public:
    CaseWriter(Case const& baby, Ontology const& ontology) : baby_(baby), ontology_(ontology) {}

    std::string run() {
        text_ = fmt::format("case: {}\n", baby_.id.text.empty() ? "unnamed" : baby_.id.text);
        if (baby_.sex != Sex::not_given) text_ += fmt::format("sex: {}\n", to_text(baby_.sex));
        if (baby_.gestation) text_ += fmt::format("gestation: {}\n", to_text(*baby_.gestation));
        if (baby_.age) text_ += fmt::format("age: {}\n", to_text(*baby_.age));
        steps();
        statements("findings", baby_.present);
        statements("absent", baby_.absent);
        statements("unsure", baby_.unsure);
        measures();
        return std::move(text_);
    }

private:
    void steps() {
        std::vector<std::string> done;
        for (StepId step = 0; step < baby_.step_done.size(); ++step) {
            if (baby_.step_done[step]) done.push_back(ontology_.steps[step].id.text);
        }
        if (!done.empty()) text_ += fmt::format("examined: [{}]\n", fmt::join(done, ", "));
    }

    std::string statement(Statement const& statement) const {
        auto const& finding = ontology_.at(statement.finding);
        std::string more;
        if (statement.sides != Sides::not_said) {
            more += fmt::format(", side: {}", to_text(statement.sides));
        }
        if (statement.grade)
            more += fmt::format(", grade: {}", finding.grades[*statement.grade].text);
        if (statement.familial) more += ", familial: true";
        if (more.empty()) return finding.id.text;
        return fmt::format("{{ finding: {}{} }}", finding.id.text, more);
    }

    void statements(std::string_view key, std::vector<Statement> const& list) {
        if (list.empty()) return;
        text_ += fmt::format("{}:\n", key);
        for (auto const& item : list) text_ += fmt::format("  - {}\n", statement(item));
    }

    void measures() {
        if (baby_.measures.empty()) return;
        text_ += "measures:\n";
        for (auto const& measured : baby_.measures) {
            auto const& measure = ontology_.measures[measured.measure];
            text_ += fmt::format("  {}: {} {}\n", measure.id.text, to_text(measured.value),
                                 measure.unit);
        }
    }

    Case const& baby_;
    Ontology const& ontology_;
    std::string text_;
};

}  // namespace

std::optional<Case> with_finding(Case baby, CompiledRulebook const& book, FindingId finding) {
    auto const& known = book.ontology->at(finding);
    bool const one_sex = baby.sex == Sex::female || baby.sex == Sex::male;
    if (known.sex != Sex::not_given && one_sex && known.sex != baby.sex) return std::nullopt;
    for (auto const above : book.ontology->ancestors(finding)) {
        if (states(baby, &Case::absent, above)) return std::nullopt;
    }
    // What was absent only because the finding was stays absent.
    if (stated_absent(baby, finding)) {
        for (auto const below : book.ontology->descendants(finding)) {
            if (!said(baby, below)) baby.absent.push_back(plain(*book.ontology, below));
        }
    }
    for (auto const list : {&Case::present, &Case::absent, &Case::unsure})
        drop(baby, list, finding);
    baby.present.push_back(plain(*book.ontology, finding));
    return baby;
}

Case smallest(Case baby, std::function<bool(Case const&)> const& wanted) {
    return Shrinker(std::move(baby), wanted).run();
}

std::string case_yaml(Case const& baby, Ontology const& ontology) {
    return CaseWriter(baby, ontology).run();
}

}  // namespace asterism
