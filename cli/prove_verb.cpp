// SPDX-License-Identifier: MIT
#include <algorithm>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "base/nearest.h"
#include "base/number.h"
#include "book.h"
#include "common.h"
#include "exit_code.h"
#include "render/json.h"
#include "render/proof.h"
#include "review/prove.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

namespace {

/// Seconds that one promise may take, as milliseconds.
sat::Limits limits(Options const& options) {
    sat::Limits result;
    auto const text = options.get("limit");
    if (text.empty()) return result;
    auto const seconds = parse_decimal(text);
    constexpr double longest = 86'400;
    if (!seconds || seconds->value <= 0 || seconds->value > longest) {
        throw UsageError(fmt::format("expected --limit SECONDS above 0, found `{}`", text));
    }
    result.time = std::chrono::milliseconds(static_cast<long long>(seconds->value * 1000));
    return result;
}

std::vector<CompiledPromise> wanted(Promises const& promises, std::vector<std::string> const& ids) {
    if (ids.empty()) return promises.all;
    std::vector<std::string> names;
    for (auto const& promise : promises.all) names.push_back(promises.syntax(promise).id.text);
    for (auto const& id : ids) {
        if (std::find(names.begin(), names.end(), id) != names.end()) continue;
        auto const help = did_you_mean(id, names);
        throw UsageError(
            fmt::format("the book makes no promise `{}`{}{}", id, help.empty() ? "" : "; ", help));
    }
    std::vector<CompiledPromise> result;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (std::find(ids.begin(), ids.end(), names[i]) != ids.end())
            result.push_back(promises.all[i]);
    }
    return result;
}

ProofView view(Proof const& proof) {
    return {proof.id,           proof.because, proof.place, std::string(to_text(proof.result)),
            proof.time.count(), proof.finding, proof.said,  proof.case_text,
            proof.why_not};
}

}  // namespace

int prove_verb(std::vector<std::string> const& arguments) {
    Options options("prove",
                    "  asterism prove                     every promise of the built-in rulebook\n"
                    "  asterism prove rules/newborn       of a rulebook in a folder\n"
                    "  asterism prove --promise white-pupil-same-day --limit 60\n");
    options.value("format", "FORMAT", "text or json")
        .list("promise", "ID", "only this promise; may be repeated")
        .value("limit", "SECONDS", "time for one promise; default 20")
        .positional(rulebook_folder, false, "the rulebook's folder")
        .common();
    if (parse_or_help(options, arguments)) return done;
    bool const json = options.format({"text", "json"}) == "json";
    auto const limit = limits(options);
    auto const paths = book_paths(options);
    Diagnostics diagnostics;
    auto const book = load_book(paths, diagnostics);
    auto const promises = book ? compile_promises(*book, diagnostics) : std::nullopt;
    if (!promises) return print_problems(diagnostics, prove_schema, json), invalid_input;
    std::vector<ProofView> proofs;
    for (auto const& promise : wanted(*promises, options.all("promise")))
        proofs.push_back(view(prove(*promises, promise, limit)));
    print(json ? json_text(proof_json(proofs)) : proof_text(proofs));
    bool const all_hold = std::all_of(proofs.begin(), proofs.end(),
                                      [](ProofView const& p) { return p.result == "holds"; });
    return all_hold ? done : found_something;
}

}  // namespace asterism::cli
