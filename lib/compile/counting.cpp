// SPDX-License-Identifier: MIT
#include "compile/counting.h"

#include <algorithm>
#include <map>

namespace asterism {

namespace {

constexpr Tenths one_key = 10;

bool in(FindingClass value, std::vector<FindingClass> const& set) {
    return std::find(set.begin(), set.end(), value) != set.end();
}

class KeyCounter {
public:
    KeyCounter(CompiledRulebook& result, BookBuilder& builder, std::vector<FindingClass> const& set)
        : result_(result), builder_(builder), set_(set) {}

    /// Members by key, in the order of findings.
    std::map<KeyId, std::vector<CountedMember>> members(bool minor) {
        std::map<KeyId, std::vector<CountedMember>> result;
        for (FindingId finding = 0; finding < result_.classes.size(); ++finding) {
            auto const& classed = result_.classes[finding];
            if (!classed || !classed->key || !in(classed->value, set_)) continue;
            if (minor != (classed->value == FindingClass::minor_variant)) continue;
            result[*classed->key].push_back({finding, counts(finding)});
        }
        return result;
    }

private:
    Literal counts(FindingId finding) {
        std::vector<Literal> terms{builder_.present(finding)};
        if (is_minor(finding)) terms.push_back(!builder_.familial(finding));
        for (auto const below : result_.ontology->descendants(finding)) {
            if (result_.classes[below]) displaced_by(finding, below, terms);
        }
        return builder_.all(terms);
    }

    /// A more specific finding takes the place of its ancestor. Where both would make the same key
    /// count it makes no difference which is counted, unless the specific one is familial.
    void displaced_by(FindingId finding, FindingId below, std::vector<Literal>& terms) {
        auto const& a = *result_.classes[finding];
        auto const& b = *result_.classes[below];
        bool const same =
            in(b.value, set_) && a.key == b.key && is_minor(finding) == is_minor(below);
        if (!same) {
            terms.push_back(!builder_.present(below));
            result_.splits.push_back({builder_.present(finding), builder_.present(below)});
        }
        if (same && is_minor(below))
            terms.push_back(!builder_.all({builder_.present(below), builder_.familial(below)}));
    }

    bool is_minor(FindingId finding) const {
        return result_.classes[finding]->value == FindingClass::minor_variant;
    }

    CompiledRulebook& result_;
    BookBuilder& builder_;
    std::vector<FindingClass> const& set_;
};

std::vector<Literal> literals_of(std::vector<CountedMember> const& members) {
    std::vector<Literal> result;
    for (auto const& member : members) result.push_back(member.counts);
    return result;
}

bool covers(CompiledRulebook const& result, KeyId major, KeyId field) {
    if (major == field) return true;
    auto const& covered = result.book->keys[major].covers;
    auto const& id = result.book->keys[field].id.text;
    return std::any_of(covered.begin(), covered.end(),
                       [&](Word const& word) { return word.text == id; });
}

/// Whether a counted major covers a field; nothing when no key can.
std::optional<Literal> cover_of(CompiledRulebook& result, BookBuilder& builder,
                                CountedKey const& minor,
                                std::map<KeyId, std::vector<CountedMember>> const& majors) {
    std::vector<Literal> ways;
    for (auto const& [key, members] : majors) {
        if (!covers(result, key, minor.key)) continue;
        ways.push_back(builder.any(literals_of(members)));
        result.splits.push_back({minor.counts, ways.back()});
    }
    return ways.empty() ? std::nullopt : std::optional(builder.any(ways));
}

void add(CompiledTally& tally, CountedKey key) {
    tally.inputs.push_back({key.counts, one_key});
    tally.keys.push_back(std::move(key));
}

}  // namespace

void build_counted_keys(CompiledRulebook& result, BookBuilder& builder, CompiledTally& tally) {
    static std::vector<FindingClass> const major_classes{FindingClass::major_anomaly,
                                                         FindingClass::red_flag};
    auto const all_majors = KeyCounter(result, builder, major_classes).members(false);
    KeyCounter counter(result, builder, tally.count);
    auto majors = counter.members(false);
    auto minors = counter.members(true);
    for (auto& [key, members] : minors) {
        CountedKey counted{key, builder.any(literals_of(members)), members, std::nullopt};
        counted.covered = cover_of(result, builder, counted, all_majors);
        if (counted.covered) counted.counts = builder.all({counted.counts, !*counted.covered});
        if (auto const major = majors.find(key); major != majors.end()) {
            counted.counts = builder.any({counted.counts, builder.any(literals_of(major->second))});
            counted.members.insert(counted.members.end(), major->second.begin(),
                                   major->second.end());
            majors.erase(major);
        }
        add(tally, std::move(counted));
    }
    for (auto& [key, members] : majors)
        add(tally, {key, builder.any(literals_of(members)), members, std::nullopt});
}

}  // namespace asterism
