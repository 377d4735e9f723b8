// SPDX-License-Identifier: MIT
#include "review/check_conditions.h"

#include <optional>

#include <fmt/format.h>

#include "review/check_rules.h"
#include "review/promise_builder.h"
#include "review/sat/babies.h"

namespace asterism {

namespace {

/// A part of a condition, and the whole as it would be without the part.
struct Part {
    CompiledCondition const* root;
    CompiledCondition const* parent;
    std::size_t child;
    std::optional<Literal> without;  ///< nothing when the part cannot simply be left out
};

/// The counting rules of constellations and their items are quoted as they were published.
bool is_published(CompiledRulebook const& book, CompiledCondition const* root) {
    for (auto const& constellation : book.constellations) {
        if (&*constellation.reached == root) return true;
    }
    for (auto const& tally : book.tallies) {
        for (auto const& item : tally.items) {
            if (&*item.when == root) return tally.constellation.has_value();
        }
    }
    return false;
}

class Conditions {
public:
    Conditions(CompiledRulebook const& book, Diagnostics& diagnostics, sat::Limits const& limits)
        : book_(book), extended_(book), diagnostics_(diagnostics), limits_(limits) {
        PromiseBuilder builder(extended_);
        builder_ = &builder;
        for (auto const* root : all_conditions(book_)) {
            path_.clear();
            collect(*root, *root);
        }
        builder_ = nullptr;
    }

    void run() {
        sat::Babies babies(solver_, {&extended_});
        auto circuit = babies.circuit(extended_);
        circuit_ = &circuit;
        for (auto const* root : all_conditions(book_)) check(*root);
        for (auto const& part : parts_) check(part);
    }

private:
    /// The root rebuilt with one child left out, by the path that leads to it.
    Literal without(CompiledCondition const& node, std::size_t depth) {
        std::vector<Literal> literals;
        for (std::size_t i = 0; i < node.children.size(); ++i) {
            bool const here = i == path_[depth];
            bool const last = depth + 1 == path_.size();
            if (here && last) continue;
            literals.push_back(here ? without(node.children[i], depth + 1)
                                    : node.children[i].literal);
        }
        return node.condition->compile(*builder_, literals);
    }

    void collect(CompiledCondition const& root, CompiledCondition const& node) {
        auto const kind = node.condition->kind();
        bool const list = kind == "all" || kind == "any" || kind == "none";
        for (std::size_t i = 0; i < node.children.size(); ++i) {
            path_.push_back(i);
            bool const droppable = list && node.children.size() > 1 && !has_twin(node, i);
            parts_.push_back({&root, &node, i, std::nullopt});
            if (droppable) parts_.back().without = without(root, 0);
            collect(root, node.children[i]);
            path_.pop_back();
        }
    }

    bool never(std::initializer_list<sat::Lit> literals) {
        return solver_.solve(literals, limits_) == sat::Answer::unsatisfiable;
    }

    void check(CompiledCondition const& root) {
        if (!never({-circuit_->at(root.literal).yes})) return;
        diagnostics_.warning("always-fires", root.condition->span(),
                             "every possible baby meets this condition",
                             "add what must be present");
    }

    /// Neither "met" nor "still possible" ever differs.
    bool same(sat::TruthVars a, sat::TruthVars b) {
        return never({a.yes, -b.yes}) && never({b.yes, -a.yes}) &&
               never({a.possible, -b.possible}) && never({b.possible, -a.possible});
    }

    void check(Part const& part) {
        auto const& child = part.parent->children[part.child];
        auto const whole = circuit_->at(part.root->literal);
        if (never({whole.yes})) return;  // told of the whole
        if (never({circuit_->at(child.literal).yes})) return report_never_met(part, child);
        if (!part.without || !same(whole, circuit_->at(*part.without))) return;
        diagnostics_.note(
            "never-decisive", child.condition->span(),
            fmt::format("the answer is the same for every baby without `{}`", words(child)),
            "another part of the condition says it already");
    }

    void report_never_met(Part const& part, CompiledCondition const& child) {
        diagnostics_.add({"never-met",
                          is_published(book_, part.root) ? Severity::note : Severity::warning,
                          fmt::format("no possible baby meets `{}`", words(child)),
                          child.condition->span(),
                          {},
                          "its parts exclude each other, or the ontology lacks a finding"});
    }

    std::string words(CompiledCondition const& condition) const {
        return condition.condition->describe(book_.vocabulary());
    }

    CompiledRulebook const& book_;
    CompiledRulebook extended_;
    Diagnostics& diagnostics_;
    sat::Limits limits_;
    sat::Solver solver_;
    Builder* builder_ = nullptr;
    sat::CircuitCnf* circuit_ = nullptr;
    std::vector<std::size_t> path_;
    std::vector<Part> parts_;
};

}  // namespace

void check_conditions(CompiledRulebook const& book, Diagnostics& diagnostics,
                      sat::Limits const& limits) {
    Conditions(book, diagnostics, limits).run();
}

}  // namespace asterism
