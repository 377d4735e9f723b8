// SPDX-License-Identifier: MIT
#pragma once

#include <compare>
#include <initializer_list>
#include <map>
#include <string>
#include <unordered_map>
#include <vector>

#include "ontology/ontology.h"
#include "rulebook/rulebook.h"

namespace asterism::oracle {

/// A set of classes.
class ClassSet {
public:
    ClassSet() = default;
    ClassSet(std::initializer_list<FindingClass> classes) {
        for (auto const value : classes) insert(value);
    }
    void insert(FindingClass value) { bits_ |= bit(value); }
    bool contains(FindingClass value) const { return (bits_ & bit(value)) != 0; }
    bool empty() const { return bits_ == 0; }
    friend auto operator<=>(ClassSet const&, ClassSet const&) = default;

private:
    static unsigned bit(FindingClass value) { return 1u << static_cast<unsigned>(value); }

    unsigned bits_ = 0;
};

/// A tally as written: classes whose keys are counted, or items whose points are added.
struct TallyText {
    ClassSet classes;
    std::vector<ScoreItem const*> items;
};

/// A finding with what the files say of it, by name.
struct FindingText {
    Finding const* finding = nullptr;
    std::size_t number = 0;  ///< its place in the ontology
    std::size_t step = 0;    ///< its step's place in the ontology
    bool told = false;       ///< history or the result of a test
    bool history = false;
    std::string parent;
    Derivation const* derivation = nullptr;
    std::vector<FindingText const*> children;
    std::vector<FindingText const*> below;  ///< children and theirs

    std::string const& name() const { return finding->id.text; }
};

/// A finding that makes a key count, and the more specific ones that take its place when they are
/// there.
struct Member {
    FindingText const* finding = nullptr;
    bool minor = false;
    std::vector<FindingText const*> displaced_by;
    std::vector<FindingText const*> displaced_by_if_familial;
};

using MembersByKey = std::map<std::string, std::vector<Member>>;

/// Book and ontology by the names that stand in their files.
struct Tables {
    Rulebook const& book;
    Ontology const& ontology;
    std::unordered_map<std::string, FindingText> findings;
    std::unordered_map<std::string, Measure const*> measures;
    std::map<std::string, Classification const*> classes;
    std::map<std::string, CountingKey const*> keys;
    std::map<std::string, TallyText> tallies;
    std::map<std::string, ConstellationSyntax const*> constellations;

    Tables(Rulebook const& book, Ontology const& ontology);

    static ClassSet major_classes();
    bool is_minor(std::string const& finding) const;
    /// The members that a tally of these classes counts: the minor variants, or all others.
    MembersByKey const& members(ClassSet counted, bool minor) const;
    /// What counts for the keys of which a counted major leaves the minor variants of a field
    /// uncounted, key by key.
    std::vector<std::vector<Member> const*> const& covering(std::string const& field) const;

private:
    Member member(std::string const& finding, ClassSet counted) const;
    void add_members(ClassSet counted);
    void add_findings();
    void add_book();
    void add_constellation_tallies(ConstellationSyntax const& constellation);
    void add_covering();
    bool covers(std::string const& major, std::string const& field) const;

    std::map<std::pair<ClassSet, bool>, MembersByKey> members_;
    std::unordered_map<std::string, std::vector<std::vector<Member> const*>> covering_;
};

}  // namespace asterism::oracle
