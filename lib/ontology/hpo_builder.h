// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "ontology/hpo.h"

namespace asterism {

/// Gathers the terms of a file, whatever its syntax, and checks the whole once it is read.
class HpoBuilder {
public:
    explicit HpoBuilder(Diagnostics& diagnostics) : diagnostics_(diagnostics) {}

    /// `http://.../releases/2024-08-13/hp.json` or `hp/releases/2024-08-13`: keeps the date. Any
    /// other text does no more than fill a gap.
    void version(std::string_view text);
    void term(std::string id, std::string label, bool obsolete, Span span);
    void replacement(std::string old_id, std::string id);
    void is_a(std::string id, std::string parent, Span span);

    std::optional<Hpo> build(SourcePtr const& source);

private:
    struct Edge {
        std::string child, parent;
        Span span;
    };

    void connect();
    void check_cycles();
    void report_ring(std::unordered_map<std::string, Edge const*> const& up);

    Diagnostics& diagnostics_;
    std::string version_;
    std::unordered_map<std::string, HpoTerm> terms_;
    std::unordered_map<std::string, Span> places_;
    std::unordered_map<std::string, std::string> replaced_by_;
    std::vector<Edge> edges_;
};

/// `HP:0000316` from that or from `http://purl.obolibrary.org/obo/HP_0000316`; empty for an id of
/// another ontology.
std::string hpo_id(std::string_view text);

void read_hpo_json(SourcePtr const& source, HpoBuilder& builder, Diagnostics& diagnostics);
void read_hpo_obo(SourcePtr const& source, HpoBuilder& builder, Diagnostics& diagnostics);

}  // namespace asterism
