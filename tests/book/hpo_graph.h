// SPDX-License-Identifier: MIT
/// The is-a graph of an unaltered Human Phenotype Ontology file (OBO Graphs JSON, gzip allowed).
#pragma once

#include <filesystem>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include <nlohmann/json_fwd.hpp>

namespace asterism::testing {

struct HpoTerm {
    std::string label;
    std::vector<std::string> synonyms;
    std::vector<std::string> parents;
    bool obsolete = false;
};

class HpoGraph {
public:
    /// Reads a release. Throws std::runtime_error when the file cannot be read as one.
    explicit HpoGraph(std::filesystem::path const& file);

    std::string const& version() const { return version_; }
    std::size_t size() const { return terms_.size(); }
    /// The term with this very id, obsolete or not; null when there is none.
    HpoTerm const* find(std::string_view id) const;
    /// The id that is in force for an id that may be alternate or obsolete; empty when none is.
    std::string current(std::string_view id) const;
    /// Everything above a term, without itself, by distance: parents first.
    std::vector<std::set<std::string>> above(std::string const& id) const;
    bool is_below(std::string const& id, std::string const& ancestor) const;

private:
    void add_node(nlohmann::json const& node);
    void add_edge(nlohmann::json const& edge);

    std::string version_;
    std::unordered_map<std::string, HpoTerm> terms_;
    std::unordered_map<std::string, std::string> replaced_by_;
};

}  // namespace asterism::testing
