// SPDX-License-Identifier: MIT
#include "review/mutant_trial.h"

#include <algorithm>
#include <atomic>
#include <random>
#include <thread>
#include <unordered_map>

#include <fmt/format.h>

#include "assess/facts.h"
#include "compile/recompile.h"
#include "review/mutant_killer.h"
#include "review/rehearse.h"

namespace asterism {

namespace {

/// The vignettes that may speak, with what is needed to ask the likeliest first.
class Witnesses {
public:
    Witnesses(CompiledRulebook const& book, std::vector<Vignette> const& all) {
        for (auto const& vignette : all) {
            if (!vignette.speaks()) continue;
            auto const facts = evaluate(book, vignette.baby, Rest::unknown);
            if (!judge(book, vignette, facts).empty()) continue;
            note_names(book, vignette);
            std::vector<bool> live;
            for (auto const& rule : book.rules)
                live.push_back(value_of(rule.when.literal, facts.values) != Truth::no);
            live_.push_back(std::move(live));
            vignettes_.push_back(&vignette);
        }
    }

    /// Those that name something of the mutant come first. Where only a rule's suggestions change,
    /// a baby whom the rule does not concern cannot notice.
    std::vector<Vignette const*> for_mutant(Mutant const& mutant) const {
        std::vector<std::size_t> hits(vignettes_.size(), 0);
        for (auto const& word : mutant.words) {
            auto const known = by_name_.find(word);
            if (known == by_name_.end()) continue;
            for (auto const index : known->second) hits[index] += word == mutant.part ? 100 : 1;
        }
        std::vector<std::size_t> order;
        for (std::size_t i = 0; i < hits.size(); ++i) {
            if (!mutant.suggestions_of || live_[i][*mutant.suggestions_of]) order.push_back(i);
        }
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t a, std::size_t b) { return hits[a] > hits[b]; });
        std::vector<Vignette const*> result;
        for (auto const index : order) result.push_back(vignettes_[index]);
        return result;
    }

private:
    void note_names(CompiledRulebook const& book, Vignette const& vignette) {
        std::vector<std::string> words;
        for (auto const& expected : vignette.referrals) {
            for (auto const& rule : expected.by.value_or(std::vector<Word>{}))
                words.push_back(rule.text);
        }
        for (auto const* list : {&vignette.baby.present, &vignette.baby.absent})
            for (auto const& said : *list) words.push_back(book.ontology->at(said.finding).id.text);
        for (auto const& measured : vignette.baby.measures)
            words.push_back(book.ontology->measures[measured.measure].id.text);
        for (auto const& expected : vignette.constellations)
            words.push_back(expected.constellation.text);
        for (auto const& expected : vignette.classes) words.push_back(expected.name.text);
        std::sort(words.begin(), words.end());
        words.erase(std::unique(words.begin(), words.end()), words.end());
        for (auto const& word : words) by_name_[word].push_back(vignettes_.size());
    }

    std::vector<Vignette const*> vignettes_;
    std::vector<std::vector<bool>> live_;  ///< by vignette, by rule: not settled as no
    std::unordered_map<std::string, std::vector<std::size_t>> by_name_;
};

/// Tries mutants one after another; each thread has its own.
class Bench {
public:
    Bench(CompiledRulebook const& book, Witnesses const& witnesses, TrialOptions const& options)
        : book_(book),
          witnesses_(witnesses),
          options_(options),
          bare_(without_vignettes(*book.book)),
          patched_(book) {}

    void run(TriedMutant& tried) {
        if (tried.mutant.suggestions_of) return with_patch(tried);
        auto edited = std::make_shared<Rulebook>(bare_);
        tried.mutant.apply(*edited);
        Diagnostics diagnostics;
        auto const mutant = recompile(edited, book_.ontology, book_.standards, diagnostics);
        if (mutant)
            judge_all(tried, *mutant);
        else
            tried.fate = MutantFate::refused;
    }

private:
    /// Only suggestions change: the circuit stays as it is.
    void with_patch(TriedMutant& tried) {
        auto const id = *tried.mutant.suggestions_of;
        tried.mutant.apply(bare_);
        auto const& written = bare_.rules[book_.rules[id].syntax].suggest;
        for (std::size_t i = 0; i < written.size(); ++i)
            patched_.rules[id].suggest[i] = {service(written[i].service.text), written[i].urgency};
        judge_all(tried, patched_);
        patched_.rules[id].suggest = book_.rules[id].suggest;
        bare_.rules[book_.rules[id].syntax] = book_.syntax(book_.rules[id]);
    }

    ServiceId service(std::string const& name) const {
        auto const& all = book_.book->services;
        auto const found = std::find_if(all.begin(), all.end(),
                                        [&](Service const& one) { return one.id.text == name; });
        return static_cast<ServiceId>(found - all.begin());
    }

    void judge_all(TriedMutant& tried, CompiledRulebook const& mutant) {
        for (auto const* vignette : witnesses_.for_mutant(tried.mutant)) {
            if (judge(mutant, *vignette).empty()) continue;
            tried.fate = MutantFate::killed;
            tried.vignette = vignette->id.text;
            return;
        }
        if (!options_.search) return;
        auto found = find_killer(book_, mutant, tried.mutant, options_.limits);
        tried.fate = found.none_exists ? MutantFate::equivalent : MutantFate::survived;
        tried.method = std::move(found.method);
        tried.killer = std::move(found.vignette);
    }

    CompiledRulebook const& book_;
    Witnesses const& witnesses_;
    TrialOptions const& options_;
    Rulebook bare_;
    CompiledRulebook patched_;
};

/// Keeps `count` of them, drawn without replacement, in their old order.
void draw(std::vector<Mutant>& all, std::size_t count, std::uint64_t seed) {
    if (count == 0 || count >= all.size()) return;
    std::mt19937_64 random(seed);
    std::vector<std::size_t> order(all.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    for (std::size_t i = 0; i < count; ++i)
        std::swap(order[i], order[i + random() % (order.size() - i)]);
    order.resize(count);
    std::sort(order.begin(), order.end());
    std::vector<Mutant> drawn;
    for (auto const index : order) drawn.push_back(std::move(all[index]));
    all = std::move(drawn);
}

}  // namespace

std::string_view to_text(MutantFate fate) {
    switch (fate) {
        case MutantFate::killed: return "killed";
        case MutantFate::equivalent: return "equivalent";
        case MutantFate::survived: return "survived";
        case MutantFate::refused: return "refused";
    }
    return "";
}

std::size_t Trial::count(MutantFate fate) const {
    return static_cast<std::size_t>(std::count_if(
        tried.begin(), tried.end(), [&](TriedMutant const& one) { return one.fate == fate; }));
}

Trial try_mutants(CompiledRulebook const& book, std::vector<Vignette> const& vignettes,
                  TrialOptions const& options) {
    Trial trial;
    auto all = mutants(book);
    if (!options.part.empty())
        std::erase_if(all, [&](Mutant const& one) { return one.part != options.part; });
    trial.made = all.size();
    draw(all, options.sample, options.seed);
    for (auto& mutant : all) trial.tried.push_back({std::move(mutant), {}, {}, {}, {}});
    Witnesses const witnesses(book, vignettes);
    std::atomic<std::size_t> next = 0;
    auto const work = [&] {
        Bench bench(book, witnesses, options);
        for (auto i = next++; i < trial.tried.size(); i = next++) bench.run(trial.tried[i]);
    };
    std::vector<std::jthread> others;
    for (unsigned i = 1; i < options.jobs; ++i) others.emplace_back(work);
    work();
    others.clear();  // waits
    return trial;
}

}  // namespace asterism
