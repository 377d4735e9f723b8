// SPDX-License-Identifier: MIT
#include "ontology/hpo_builder.h"

#include <algorithm>

#include <fmt/format.h>

namespace asterism {

std::string hpo_id(std::string_view text) {
    auto const begin = text.rfind('/');
    if (begin != std::string_view::npos) text.remove_prefix(begin + 1);
    if (!text.starts_with("HP:") && !text.starts_with("HP_")) return {};
    return "HP:" + std::string(text.substr(3));
}

void HpoBuilder::version(std::string_view text) {
    constexpr std::string_view marker = "releases/";
    auto const at = text.find(marker);
    bool const in_path = at != std::string_view::npos;
    if (in_path) {
        text.remove_prefix(at + marker.size());
        text = text.substr(0, text.find('/'));
    }
    if (in_path || version_.empty()) version_ = std::string(text);
}

void HpoBuilder::term(std::string id, std::string label, bool obsolete, Span span) {
    auto const [place, added] = places_.emplace(id, span);
    if (!added) {
        diagnostics_.add({"hpo-twice",
                          Severity::error,
                          fmt::format("the term `{}` is described twice", id),
                          std::move(span),
                          {{place->second, "the first description"}},
                          "use an unaltered release"});
        return;
    }
    terms_.emplace(std::move(id), HpoTerm{std::move(label), {}, obsolete});
}

void HpoBuilder::replacement(std::string old_id, std::string id) {
    replaced_by_.insert_or_assign(std::move(old_id), std::move(id));
}

void HpoBuilder::is_a(std::string id, std::string parent, Span span) {
    edges_.push_back({std::move(id), std::move(parent), std::move(span)});
}

void HpoBuilder::connect() {
    for (auto const& edge : edges_) {
        auto const child = terms_.find(edge.child);
        bool const known = child != terms_.end() && terms_.count(edge.parent) > 0;
        if (known) {
            child->second.parents.push_back(edge.parent);
            continue;
        }
        auto const& missing = child == terms_.end() ? edge.child : edge.parent;
        diagnostics_.error(
            "hpo-unknown-term", edge.span,
            fmt::format("`{}` is a kind of `{}`, but the file does not describe `{}`", edge.child,
                        edge.parent, missing),
            "use a complete, unaltered release");
    }
}

/// Takes away, again and again, edges whose parent has none left above it; what stays hangs in or
/// below a ring.
void HpoBuilder::check_cycles() {
    std::unordered_map<std::string, std::size_t> open;
    std::unordered_map<std::string, std::vector<std::string>> children;
    for (auto const& edge : edges_) {
        ++open[edge.child];
        children[edge.parent].push_back(edge.child);
    }
    std::vector<std::string> ready;
    for (auto const& [id, term] : terms_) {
        if (open.count(id) == 0) ready.push_back(id);
    }
    while (!ready.empty()) {
        auto const id = std::move(ready.back());
        ready.pop_back();
        for (auto const& child : children[id]) {
            if (--open[child] == 0) ready.push_back(child);
        }
    }
    std::unordered_map<std::string, Edge const*> up;
    for (auto const& edge : edges_) {
        if (open[edge.child] > 0 && open[edge.parent] > 0) up.emplace(edge.child, &edge);
    }
    if (!up.empty()) report_ring(up);
}

void HpoBuilder::report_ring(std::unordered_map<std::string, Edge const*> const& up) {
    auto const starts = std::min_element(up.begin(), up.end(), [](auto const& a, auto const& b) {
        return before(a.second->span, b.second->span);
    });
    auto const* edge = starts->second;
    for (std::size_t step = 0; step < up.size(); ++step) edge = up.at(edge->parent);
    diagnostics_.error("hpo-cycle", edge->span,
                       fmt::format("`{}` is a kind of `{}`, which leads back to `{}`", edge->child,
                                   edge->parent, edge->child),
                       "use an unaltered release");
}

std::optional<Hpo> HpoBuilder::build(SourcePtr const& source) {
    if (terms_.empty()) {
        diagnostics_.error("not-hpo", {source, 0, 0}, "the file describes no HPO term",
                           "expected an unaltered hp.json or hp.obo");
        return std::nullopt;
    }
    connect();
    if (diagnostics_.has_errors()) return std::nullopt;
    check_cycles();
    if (diagnostics_.has_errors()) return std::nullopt;
    return Hpo(std::move(version_), std::move(terms_), std::move(replaced_by_));
}

}  // namespace asterism
