// SPDX-License-Identifier: MIT
#include "audit/forecast.h"

#include <algorithm>
#include <cmath>

#include "batch/fast_judge.h"

namespace asterism::audit {

namespace {

/// So many newborns are judged at once.
constexpr std::uint64_t group_size = 4 * batch::Lanes::count;

/// One book and its judge.
class Judge {
public:
    explicit Judge(CompiledRulebook const& book) : book_(book), judge_(book_) {}

    // The judge refers to its book.
    Judge(Judge const&) = delete;
    Judge& operator=(Judge const&) = delete;

    std::span<batch::Answers const> judge(std::vector<Case> const& babies) {
        cases_.resize(babies.size());
        for (std::size_t i = 0; i < babies.size(); ++i) copy(babies[i], cases_[i]);
        return judge_.judge(cases_);
    }

private:
    batch::FastBook book_;
    batch::FastJudge judge_;
    std::vector<batch::FastCase> cases_;
};

bool is_suggested(batch::ServiceAnswer const& answer) {
    return answer.verdict == Verdict::suggested;
}

class Forecasting {
public:
    Forecasting(CompiledRulebook const& book, CompiledRulebook const* earlier) : judge_(book) {
        for (auto const& service : book.book->services)
            result_.services.push_back({service.id.text, service.label, 0, 0, {}, {}, 0, 0});
        result_.any = {"any", "any service", 0, 0, {}, {}, 0, 0};
        result_.compared = earlier != nullptr;
        for (auto const id : uncounted(book))
            result_.uncounted.push_back(book.ontology->at(id).label);
        if (earlier) add_earlier(*earlier);
        now_.resize(result_.services.size());
        then_.resize(result_.services.size());
    }

    void add(std::vector<Case> const& babies) {
        auto const answers = judge_.judge(babies);
        auto const earlier = earlier_ ? earlier_->judge(babies) : std::span<batch::Answers const>();
        for (std::size_t i = 0; i < babies.size(); ++i) {
            bool const any = add(answers[i]);
            if (earlier_) compare(earlier[i], any);
        }
    }

    Forecast take() { return std::move(result_); }

private:
    /// Whether any service is suggested.
    bool add(batch::Answers const& answers) {
        ++result_.samples;
        std::fill(now_.begin(), now_.end(), false);
        for (std::size_t i = 0; i < answers.size(); ++i) count(answers[i], i);
        auto const highest = highest_urgency(answers);
        if (!highest) return false;
        ++result_.any.suggested;
        ++result_.any.by_urgency[static_cast<std::size_t>(*highest)];
        return true;
    }

    void add_earlier(CompiledRulebook const& earlier) {
        earlier_.emplace(earlier);
        result_.any.before = 0;
        for (auto const& service : earlier.book->services) {
            auto& all = result_.services;
            auto at = std::find_if(all.begin(), all.end(),
                                   [&](auto const& s) { return s.id == service.id.text; });
            if (at == all.end())
                at = all.insert(at, {service.id.text, service.label, 0, 0, {}, {}, 0, 0});
            at->before = 0;
            place_.push_back(static_cast<std::size_t>(at - all.begin()));
        }
    }

    void count(batch::ServiceAnswer const& answer, std::size_t at) {
        auto& service = result_.services[at];
        if (answer.verdict == Verdict::unsettled) ++service.unsettled;
        if (!is_suggested(answer)) return;
        now_[at] = true;
        ++service.suggested;
        ++service.by_urgency[static_cast<std::size_t>(answer.urgency.value_or(Urgency::routine))];
    }

    void compare(batch::Answers const& answers, bool any_now) {
        std::fill(then_.begin(), then_.end(), false);
        for (std::size_t i = 0; i < answers.size(); ++i)
            then_[place_[i]] = is_suggested(answers[i]);
        bool any_then = false;
        for (std::size_t i = 0; i < then_.size(); ++i) {
            any_then = any_then || then_[i];
            compare(result_.services[i], now_[i], then_[i]);
        }
        compare(result_.any, any_now, any_then);
    }

    static void compare(ServiceForecast& service, bool now, bool then) {
        if (then) service.before = service.before.value_or(0) + 1;
        if (now && !then) ++service.gained;
        if (then && !now) ++service.lost;
    }

    Judge judge_;
    std::optional<Judge> earlier_;
    std::vector<std::size_t> place_;  ///< of the earlier book's services
    std::vector<bool> now_, then_;
    Forecast result_;
};

}  // namespace

Difference paired_difference(std::uint64_t gained, std::uint64_t lost, std::uint64_t samples) {
    if (samples == 0) return {};
    double const n = static_cast<double>(samples);
    double const up = static_cast<double>(gained) / n, down = static_cast<double>(lost) / n;
    double const value = up - down;
    if (gained + lost == 0) {
        // None seen is not none: up to the score limit of none among so many may change.
        auto const limit = wilson(0, samples).high;
        return {0, -limit, limit};
    }
    double const half = z95 * std::sqrt(std::max(0.0, up + down - value * value) / n);
    return {value, value - half, value + half};
}

Forecast forecast(CompiledRulebook const& book, CompiledRulebook const* earlier,
                  NewbornModel const& model, std::uint64_t samples, std::uint64_t seed) {
    Forecasting forecasting(book, earlier);
    Newborns newborns(book, model, seed);
    std::vector<Case> babies;
    for (std::uint64_t left = samples; left > 0; left -= babies.size()) {
        babies.clear();
        while (babies.size() < std::min(left, group_size)) babies.push_back(newborns.next());
        forecasting.add(babies);
    }
    auto result = forecasting.take();
    result.seed = seed;
    return result;
}

}  // namespace asterism::audit
