// SPDX-License-Identifier: MIT
#include "render/rehearsal.h"

#include <algorithm>
#include <sstream>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

std::vector<std::string> missing(CoveredNode const& node) {
    std::vector<std::string> result;
    if (node.times(Truth::yes) == 0) result.emplace_back("met");
    if (node.times(Truth::no) == 0) result.emplace_back("not met");
    return result;
}

std::size_t own(Rehearsal const& rehearsal) {
    return static_cast<std::size_t>(
        std::count_if(rehearsal.vignettes.begin(), rehearsal.vignettes.end(),
                      [](Vignette const& one) { return !one.generated; }));
}

std::size_t seen(Coverage const& coverage, Truth truth) {
    auto const& nodes = coverage.nodes();
    return static_cast<std::size_t>(
        std::count_if(nodes.begin(), nodes.end(),
                      [&](CoveredNode const& node) { return node.times(truth) > 0; }));
}

std::string coverage_text(RehearsalView const& view) {
    auto const& coverage = view.rehearsal.coverage;
    std::string text;
    for (auto const& node : coverage.nodes()) {
        if (node.covered()) continue;
        auto const& condition = *node.condition->condition;
        text += fmt::format("{}: never {}: {} ({})\n", condition.span().place(),
                            fmt::join(missing(node), ", never "),
                            condition.describe(view.vocabulary), node.part);
    }
    return text + fmt::format(
                      "conditions: {} of {} seen met and not met ({:.1f} %); met {}, not "
                      "met {}, open {}\n",
                      coverage.covered(), coverage.nodes().size(), coverage.percent(),
                      seen(coverage, Truth::yes), seen(coverage, Truth::no),
                      seen(coverage, Truth::unknown));
}

std::string survivor_text(TriedMutant const& one) {
    auto text = fmt::format("{}: survived: {}: {} ({})\n", one.mutant.place.place(),
                            to_text(one.mutant.kind), one.mutant.what, one.mutant.part);
    if (!one.killer.empty()) return text + "    a vignette that would notice:\n" + one.killer;
    return text + fmt::format("    no vignette found: {}\n", one.method);
}

std::string trial_text(Trial const& trial) {
    std::string text;
    for (auto const& one : trial.tried) {
        if (one.fate == MutantFate::survived) text += survivor_text(one);
        if (one.fate == MutantFate::equivalent)
            text +=
                fmt::format("{}: equivalent: {}: {} ({}); {}\n", one.mutant.place.place(),
                            to_text(one.mutant.kind), one.mutant.what, one.mutant.part, one.method);
    }
    auto const of = trial.tried.size() < trial.made ? fmt::format(" (a sample of {})", trial.made)
                                                    : std::string();
    return text + fmt::format(
                      "mutants: {}{}, {} killed, {} equivalent, {} survived; {} more "
                      "refused by the loader\n",
                      trial.total(), of, trial.count(MutantFate::killed),
                      trial.count(MutantFate::equivalent), trial.count(MutantFate::survived),
                      trial.count(MutantFate::refused));
}

Json failures_json(Rehearsal const& rehearsal) {
    auto list = Json::array();
    for (std::size_t i = 0; i < rehearsal.vignettes.size(); ++i) {
        for (auto const& failure : rehearsal.failures[i])
            list.push_back({{"vignette", failure.vignette},
                            {"place", failure.place.place()},
                            {"message", failure.message},
                            {"generated", rehearsal.vignettes[i].generated}});
    }
    return list;
}

Json unreached_json(RehearsalView const& view) {
    auto list = Json::array();
    for (auto const& node : view.rehearsal.coverage.nodes()) {
        if (node.covered()) continue;
        auto const& condition = *node.condition->condition;
        list.push_back({{"place", condition.span().place()},
                        {"part", node.part},
                        {"condition", condition.describe(view.vocabulary)},
                        {"never", missing(node)}});
    }
    return list;
}

Json mutant_json(TriedMutant const& one) {
    return {{"place", one.mutant.place.place()},
            {"kind", to_text(one.mutant.kind)},
            {"part", one.mutant.part},
            {"edit", one.mutant.what},
            {"method", one.method},
            {"vignette", one.killer}};
}

Json trial_json(Trial const& trial) {
    auto survivors = Json::array();
    auto equivalent = Json::array();
    for (auto const& one : trial.tried) {
        if (one.fate == MutantFate::survived) survivors.push_back(mutant_json(one));
        if (one.fate == MutantFate::equivalent) equivalent.push_back(mutant_json(one));
    }
    return {{"total", trial.total()},
            {"killed", trial.count(MutantFate::killed)},
            {"equivalent", trial.count(MutantFate::equivalent)},
            {"survived", trial.count(MutantFate::survived)},
            {"refused", trial.count(MutantFate::refused)},
            {"of", trial.made},
            {"survivors", survivors},
            {"equivalents", equivalent}};
}

}  // namespace

std::size_t failing(Rehearsal const& rehearsal) {
    std::size_t result = 0;
    for (std::size_t i = 0; i < rehearsal.vignettes.size(); ++i) {
        if (!rehearsal.vignettes[i].generated && !rehearsal.failures[i].empty()) ++result;
    }
    return result;
}

std::string rehearsal_text(RehearsalView const& view) {
    auto const& rehearsal = view.rehearsal;
    std::string text;
    for (auto const& list : rehearsal.failures) {
        for (auto const& failure : list)
            text += fmt::format("{}: {}\n", failure.place.place(), failure.message);
    }
    text += coverage_text(view);
    if (view.trial) text += trial_text(*view.trial);
    auto const all = own(rehearsal);
    auto const generated = rehearsal.vignettes.size() - all;
    return text + fmt::format("vignettes: {}, {} fail{}\n", all, failing(rehearsal),
                              generated ? fmt::format("; {} generated, not counted", generated)
                                        : std::string());
}

Json rehearsal_json(RehearsalView const& view) {
    auto const& rehearsal = view.rehearsal;
    auto const& coverage = rehearsal.coverage;
    Json result{{"schema", rehearse_schema},
                {"vignettes", {{"total", own(rehearsal)}, {"failing", failing(rehearsal)}}},
                {"failures", failures_json(rehearsal)},
                {"coverage",
                 {{"nodes", coverage.nodes().size()},
                  {"covered", coverage.covered()},
                  {"met", seen(coverage, Truth::yes)},
                  {"not_met", seen(coverage, Truth::no)},
                  {"open", seen(coverage, Truth::unknown)},
                  {"unreached", unreached_json(view)}}}};
    if (view.trial) result["mutants"] = trial_json(*view.trial);
    return result;
}

}  // namespace asterism
