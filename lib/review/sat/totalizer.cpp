// SPDX-License-Identifier: MIT
#include "review/sat/totalizer.h"

#include <algorithm>
#include <map>
#include <numeric>

namespace asterism::sat {

namespace {

/// The sums above 0 that a group of inputs can have, with a literal for "at least this much"; a sum
/// past the cap is the cap.
using Sums = std::map<std::int64_t, Lit>;

class Totalizer {
public:
    Totalizer(Solver& solver, std::int64_t cap) : solver_(solver), cap_(cap) {}

    Sums total(std::vector<WeightedLit> const& inputs, std::size_t begin, std::size_t end) {
        if (end - begin == 1)
            return {{std::min(cap_, inputs[begin].weight), inputs[begin].literal}};
        auto const middle = begin + (end - begin) / 2;
        return merged(total(inputs, begin, middle), total(inputs, middle, end));
    }

private:
    Sums merged(Sums const& a, Sums const& b) {
        Sums result;
        for_each_pair(a, b, [&](std::int64_t x, std::int64_t y) {
            if (x + y > 0) result.emplace(std::min(cap_, x + y), 0);
        });
        for (auto& [sum, literal] : result) literal = solver_.add_variable();
        // The larger of two neighbouring sums takes in the smaller.
        for (auto it = result.begin(); it != result.end() && std::next(it) != result.end(); ++it) {
            solver_.add_clause({-std::next(it)->second, it->second});
        }
        for_each_pair(a, b, [&](std::int64_t x, std::int64_t y) {
            reached(a, x, b, y, result);
            not_passed(a, x, b, y, result);
        });
        return result;
    }

    template <class Do>
    static void for_each_pair(Sums const& a, Sums const& b, Do const& act) {
        auto const sums = [](Sums const& side) {
            std::vector<std::int64_t> all{0};
            for (auto const& [sum, literal] : side) all.push_back(sum);
            return all;
        };
        for (auto const x : sums(a)) {
            for (auto const y : sums(b)) act(x, y);
        }
    }

    /// Left at least x and right at least y: together at least x + y.
    void reached(Sums const& a, std::int64_t x, Sums const& b, std::int64_t y, Sums const& result) {
        if (x + y == 0) return;
        std::vector<Lit> clause{result.at(std::min(cap_, x + y))};
        if (x > 0) clause.push_back(-a.at(x));
        if (y > 0) clause.push_back(-b.at(y));
        solver_.add_clause(clause);
    }

    /// Left no more than x and right no more than y: together no more than x + y.
    void not_passed(Sums const& a, std::int64_t x, Sums const& b, std::int64_t y,
                    Sums const& result) {
        auto const more = result.upper_bound(std::min(cap_, x + y));
        if (more == result.end()) return;
        std::vector<Lit> clause{-more->second};
        if (auto const next = a.upper_bound(x); next != a.end()) clause.push_back(next->second);
        if (auto const next = b.upper_bound(y); next != b.end()) clause.push_back(next->second);
        solver_.add_clause(clause);
    }

    Solver& solver_;
    std::int64_t cap_;
};

std::int64_t sum_of(std::vector<WeightedLit> const& inputs) {
    std::int64_t sum = 0;
    for (auto const& input : inputs) sum += input.weight;
    return sum;
}

void reduce(std::int64_t& threshold, std::vector<WeightedLit>& inputs) {
    std::int64_t divisor = 0;
    for (auto const& input : inputs) divisor = std::gcd(divisor, input.weight);
    for (auto& input : inputs) input.weight /= divisor;
    threshold = (threshold + divisor - 1) / divisor;
}

}  // namespace

Lit at_least(Solver& solver, std::int64_t threshold, std::vector<WeightedLit> inputs) {
    if (threshold <= 0) return solver.always();
    auto const sum = sum_of(inputs);
    if (sum < threshold) return -solver.always();
    reduce(threshold, inputs);
    std::vector<Lit> literals;
    for (auto const& input : inputs) literals.push_back(input.literal);
    auto const least =
        std::min_element(inputs.begin(), inputs.end(), [](auto const& a, auto const& b) {
            return a.weight < b.weight;
        })->weight;
    if (least >= threshold) return disjunction(solver, literals);
    if (sum_of(inputs) - least < threshold) return conjunction(solver, literals);
    return Totalizer(solver, threshold).total(inputs, 0, inputs.size()).at(threshold);
}

}  // namespace asterism::sat
