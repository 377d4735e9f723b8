// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/diagnostic.h"
#include "ontology/stored_names.h"

namespace asterism {

/// What a typed name stands for: exactly one thing, several (ambiguous), or nothing (`nearest` then
/// helps).
struct Resolution {
    std::vector<std::uint32_t> targets;
    std::vector<std::string> nearest;

    bool unique() const { return targets.size() == 1; }
    bool ambiguous() const { return targets.size() > 1; }
    std::uint32_t target() const { return targets.front(); }
};

/// Maps names to things, blind to case, accents, hyphens, spaces and British or American digraphs.
class NameIndex {
public:
    /// Registers a name. `printed` names may be suggested to a person; outdated ones may not.
    void add(std::string_view name, std::uint32_t target, bool printed = true);
    Resolution resolve(std::string_view typed) const;
    /// The things that carry this very name (after folding), in order.
    std::vector<std::uint32_t> exact(std::string_view name) const;
    std::vector<std::string> const& printed() const;

    /// All names as bytes, the same for the same names, and an index over such bytes, which must
    /// outlive it. `from_stored` throws std::runtime_error when they are damaged.
    std::string stored() const;
    static NameIndex from_stored(std::string_view bytes);

private:
    /// Turns an index over stored bytes into one that can grow.
    void make_growable();

    std::unordered_map<std::string, std::vector<std::uint32_t>> targets_;
    std::vector<std::string> printed_;
    std::shared_ptr<StoredNames const> stored_;  ///< null, or where all names stand
};

/// Resolves a word to exactly one thing, or reports why not: unknown (with the nearest names) or
/// ambiguous (asking which; `label` names each candidate).
template <class Label>
bool resolve_word(NameIndex const& names, Word const& word, std::string_view what, Label label,
                  std::uint32_t& target, Diagnostics& diagnostics);

/// Reports an unknown or ambiguous name; `candidates` are the labels of the things it could mean.
void report_unresolved(Word const& word, std::string_view what, Resolution const& resolution,
                       std::vector<std::string> const& candidates, Diagnostics& diagnostics);

template <class Label>
bool resolve_word(NameIndex const& names, Word const& word, std::string_view what, Label label,
                  std::uint32_t& target, Diagnostics& diagnostics) {
    auto const resolution = names.resolve(word.text);
    if (resolution.unique()) {
        target = resolution.target();
        return true;
    }
    std::vector<std::string> candidates;
    for (auto const id : resolution.targets) candidates.push_back(label(id));
    report_unresolved(word, what, resolution, candidates, diagnostics);
    return false;
}

}  // namespace asterism
