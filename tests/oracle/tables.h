// SPDX-License-Identifier: MIT
#pragma once

#include <compare>
#include <initializer_list>
#include <map>
#include <optional>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "ontology/ontology.h"
#include "oracle/condition_text.h"
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

/// A finding with what the files say of it.
struct FindingText {
    Finding const* finding = nullptr;
    std::size_t number = 0;  ///< its place in the ontology
    std::size_t step = 0;    ///< its step's place in the ontology
    bool told = false;       ///< history or the result of a test
    bool history = false;
    bool paired = false;
    bool red_flag = false;
    FindingText const* parent = nullptr;
    Classification const* classed = nullptr;
    std::optional<ConditionText> derivation{};
    std::vector<ConditionText const*> derived_by_measures{};
    std::vector<FindingText const*> children{};
    std::vector<FindingText const*> below{};  ///< children and theirs

    std::string const& name() const { return finding->id.text; }
};

/// A finding that makes a key count, and the more specific ones that take its place when they are
/// there.
struct Member {
    FindingText const* finding = nullptr;
    bool minor = false;
    std::vector<FindingText const*> displaced_by{};
    std::vector<FindingText const*> displaced_by_if_familial{};
};

/// All that make one key count. Whether they do can be a question: a key that is one plain finding
/// asks whether that is there, and lists that read the same ask the same.
struct Members {
    std::vector<Member> list{};
    std::size_t number = 0;
    std::size_t question = 0;
};

/// A key as one tally counts it.
struct CountedKeyText {
    Members const* minors = nullptr;
    Members const* others = nullptr;
    /// A counted major of any of these leaves the minor variants uncounted.
    std::vector<Members const*> covering{};
};

struct PointsText {
    ConditionText when;
    std::int64_t tenths = 10;
};

/// A tally as written: keys that are counted, or items whose points are added.
struct TallyText {
    std::vector<CountedKeyText> keys{};
    std::vector<PointsText> items{};
};

struct SuggestionText {
    std::size_t service = 0;  ///< its place in the book
    Urgency urgency = Urgency::routine;
};

struct RuleText {
    ConditionText when;
    std::vector<FindingText const*> essential{};
    std::vector<SuggestionText> suggest{};
};

/// Book and ontology, each name that stands in their files looked up.
struct Tables {
    Rulebook const& book;
    Ontology const& ontology;
    std::vector<FindingText> findings;          ///< in the order of the ontology
    std::vector<TallyText> tallies;             ///< in the order of `tally_names`
    std::vector<ConditionText> constellations;  ///< when each is reached
    std::vector<RuleText> rules;
    std::size_t member_lists = 0;
    /// Questions of the counting: first one a finding, whether it is there, then the other lists.
    std::size_t questions = 0;
    /// Each finding that counts with each that would take its place.
    std::vector<std::pair<FindingText const*, FindingText const*>> displaced;

    Tables(Rulebook const& book, Ontology const& ontology);
    Tables(Tables const&) = delete;
    Tables& operator=(Tables const&) = delete;

private:
    using MembersByKey = std::map<std::string, Members>;

    FindingText& finding(std::string const& id);
    Names names();
    void add_findings();
    void add_classes();
    void add_book();
    TallyText tally_text(TallySyntax const& syntax, Names const& names);
    void add_constellation(ConstellationSyntax const& constellation, Names const& names);
    void add_rule(Rule const& rule, Names const& names);
    Member member(FindingText const& finding, ClassSet counted) const;
    MembersByKey const& members(ClassSet counted, bool minor);
    void number_members(MembersByKey& by_key);
    std::vector<CountedKeyText> counted_keys(ClassSet counted);
    std::vector<Members const*> covering(std::string const& field);
    void note_displaced(MembersByKey const& by_key);

    std::unordered_map<std::string, std::size_t> finding_numbers_;
    std::unordered_map<std::string, std::size_t> tally_numbers_;
    std::map<std::pair<ClassSet, bool>, MembersByKey> members_;
    std::map<std::string, std::size_t> question_numbers_;
};

}  // namespace asterism::oracle
