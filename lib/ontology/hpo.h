// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/diagnostic.h"
#include "base/time.h"

namespace asterism {

struct HpoTerm {
    std::string label;
    std::vector<std::string> parents;  ///< is-a
    bool obsolete = false;
};

/// The is-a graph of one release of the Human Phenotype Ontology. None is shipped: the user
/// supplies an unaltered file. Immutable after reading.
class Hpo {
public:
    Hpo(std::string version, std::unordered_map<std::string, HpoTerm> terms,
        std::unordered_map<std::string, std::string> replaced_by);

    /// `2024-08-13`; empty when the file does not say.
    std::string const& version() const { return version_; }
    std::size_t size() const { return terms_.size(); }
    /// The term with this very id, obsolete or not; null when there is none.
    HpoTerm const* find(std::string_view id) const;
    /// The id in force for one that may be alternate or obsolete; empty when there is none.
    std::string current(std::string_view id) const;
    /// Everything above a term, without itself, by distance: parents first, each level sorted.
    std::vector<std::vector<std::string>> above(std::string const& id) const;

private:
    std::string version_;
    std::unordered_map<std::string, HpoTerm> terms_;
    std::unordered_map<std::string, std::string> replaced_by_;
};

/// Reads hp.json (OBO Graphs) or hp.obo, told apart by the first character. Reported, each with its
/// place: text that is neither, a term without an id or described twice, an is-a that leads to no
/// term or back to where it began. Nothing is returned after an error.
std::optional<Hpo> read_hpo(SourcePtr const& source, Diagnostics& diagnostics);

/// True for a text that starts as gzip does.
bool is_gzip(std::string_view bytes);
/// Unpacks a gzip file; an error when it is damaged or would be larger than `most_bytes`.
Parsed<std::string> unpack_gzip(std::string_view bytes, std::size_t most_bytes);

}  // namespace asterism
