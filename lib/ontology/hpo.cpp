// SPDX-License-Identifier: MIT
#include "ontology/hpo.h"

#include <algorithm>
#include <unordered_set>

#include "ontology/hpo_builder.h"

namespace asterism {

Hpo::Hpo(std::string version, std::unordered_map<std::string, HpoTerm> terms,
         std::unordered_map<std::string, std::string> replaced_by)
    : version_(std::move(version)),
      terms_(std::move(terms)),
      replaced_by_(std::move(replaced_by)) {}

HpoTerm const* Hpo::find(std::string_view id) const {
    auto const found = terms_.find(std::string(id));
    return found == terms_.end() ? nullptr : &found->second;
}

std::string Hpo::current(std::string_view id) const {
    auto const* term = find(id);
    if (term && !term->obsolete) return std::string(id);
    auto const replacement = replaced_by_.find(std::string(id));
    if (replacement == replaced_by_.end()) return {};
    auto const* target = find(replacement->second);
    return target && !target->obsolete ? replacement->second : std::string();
}

std::vector<std::vector<std::string>> Hpo::above(std::string const& id) const {
    std::vector<std::vector<std::string>> levels;
    std::unordered_set<std::string> seen{id};
    std::vector<std::string> level{id};
    while (true) {
        std::vector<std::string> next;
        for (auto const& child : level) {
            auto const* term = find(child);
            if (!term) continue;
            for (auto const& parent : term->parents) {
                if (seen.insert(parent).second) next.push_back(parent);
            }
        }
        if (next.empty()) return levels;
        std::sort(next.begin(), next.end());
        levels.push_back(next);
        level = std::move(next);
    }
}

std::optional<Hpo> read_hpo(SourcePtr const& source, Diagnostics& diagnostics) {
    Diagnostics problems;
    HpoBuilder builder(problems);
    auto const first = source->text().find_first_not_of(" \t\r\n");
    bool const json = first != std::string_view::npos && source->text()[first] == '{';
    if (json)
        read_hpo_json(source, builder, problems);
    else
        read_hpo_obo(source, builder, problems);
    auto hpo = problems.has_errors() ? std::nullopt : builder.build(source);
    bool const failed = problems.has_errors();
    diagnostics.append(problems);
    return failed ? std::nullopt : std::move(hpo);
}

}  // namespace asterism
