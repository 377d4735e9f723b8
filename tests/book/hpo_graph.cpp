// SPDX-License-Identifier: MIT
#include "hpo_graph.h"

#include <algorithm>
#include <array>
#include <memory>
#include <stdexcept>

#include <zlib.h>
#include <nlohmann/json.hpp>

namespace asterism::testing {

namespace {

using nlohmann::json;

std::string unpacked(std::filesystem::path const& path) {
    std::unique_ptr<gzFile_s, decltype(&gzclose)> const file(gzopen(path.c_str(), "rb"), gzclose);
    if (!file) throw std::runtime_error("cannot open " + path.string());
    std::string text;
    std::array<char, 1 << 16> block;
    int got = 0;
    while ((got = gzread(file.get(), block.data(), block.size())) > 0) {
        text.append(block.data(), static_cast<std::size_t>(got));
    }
    if (got < 0) throw std::runtime_error("cannot unpack " + path.string());
    return text;
}

/// `http://purl.obolibrary.org/obo/HP_0000316` and `HP:0000316` are the same term.
std::string short_id(std::string const& iri) {
    auto id = iri.substr(iri.find_last_of('/') + 1);
    std::replace(id.begin(), id.end(), '_', ':');
    return id;
}

json const& member(json const& object, char const* key) {
    static json const nothing = json::object();
    auto const found = object.find(key);
    return found == object.end() ? nothing : *found;
}

}  // namespace

HpoGraph::HpoGraph(std::filesystem::path const& file) {
    auto const document = json::parse(unpacked(file));
    auto const& graph = document.at("graphs").at(0);
    version_ = member(graph, "meta").value("version", "");
    for (auto const& node : graph.at("nodes")) add_node(node);
    for (auto const& edge : graph.at("edges")) add_edge(edge);
    if (terms_.empty()) throw std::runtime_error("no HPO term in " + file.string());
}

void HpoGraph::add_node(json const& node) {
    auto const id = short_id(node.value("id", ""));
    if (!id.starts_with("HP:")) return;
    auto const& meta = member(node, "meta");
    auto& term = terms_[id];
    term.label = node.value("lbl", "");
    term.obsolete = meta.value("deprecated", false);
    for (auto const& synonym : member(meta, "synonyms")) term.synonyms.push_back(synonym.at("val"));
    for (auto const& property : member(meta, "basicPropertyValues")) {
        auto const predicate = property.at("pred").get<std::string>();
        auto const value = property.at("val").get<std::string>();
        if (predicate.ends_with("IAO_0100001")) replaced_by_[id] = short_id(value);
        if (predicate.ends_with("hasAlternativeId")) replaced_by_[short_id(value)] = id;
    }
}

void HpoGraph::add_edge(json const& edge) {
    if (edge.at("pred") != "is_a") return;
    auto const found = terms_.find(short_id(edge.at("sub")));
    if (found != terms_.end()) found->second.parents.push_back(short_id(edge.at("obj")));
}

HpoTerm const* HpoGraph::find(std::string_view id) const {
    auto const found = terms_.find(std::string(id));
    return found == terms_.end() ? nullptr : &found->second;
}

std::string HpoGraph::current(std::string_view id) const {
    auto const* term = find(id);
    if (term && !term->obsolete) return std::string(id);
    auto const replacement = replaced_by_.find(std::string(id));
    if (replacement == replaced_by_.end()) return {};
    auto const* target = find(replacement->second);
    return target && !target->obsolete ? replacement->second : std::string();
}

std::vector<std::set<std::string>> HpoGraph::above(std::string const& id) const {
    std::vector<std::set<std::string>> levels;
    std::set<std::string> seen{id};
    std::set<std::string> level{id};
    while (!level.empty()) {
        std::set<std::string> next;
        for (auto const& term : level) {
            auto const* known = find(term);
            if (!known) continue;
            for (auto const& parent : known->parents) {
                if (seen.insert(parent).second) next.insert(parent);
            }
        }
        if (!next.empty()) levels.push_back(next);
        level = std::move(next);
    }
    return levels;
}

bool HpoGraph::is_below(std::string const& id, std::string const& ancestor) const {
    auto const levels = above(id);
    return std::any_of(levels.begin(), levels.end(),
                       [&](auto const& level) { return level.count(ancestor) > 0; });
}

}  // namespace asterism::testing
