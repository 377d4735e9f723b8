// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/lazy_list.h"
#include "base/source.h"
#include "yaml/node.h"

namespace asterism {

/// What a finding means, from harmless to urgent. The order is used: a child may not be milder than
/// its ancestor.
enum class FindingClass : std::uint8_t { normal_variant, minor_variant, major_anomaly, red_flag };

/// How soon, from late to now.
enum class Urgency : std::uint8_t { routine, urgent, same_day, emergency };

/// Why findings count as one: a field of minor variants, a sequence, or an organ system.
enum class KeyKind : std::uint8_t { field, sequence, system };

/// What a rule rests on.
enum class Strength : std::uint8_t { guideline, study, common_practice, project_choice };

std::string_view to_text(FindingClass value);
std::string_view to_text(Urgency value);
std::string_view to_text(KeyKind value);
std::string_view to_text(Strength value);

struct RulebookHeader {
    Word id;
    Word effective;  ///< the day from which the book is in force
    std::string title;
    std::string version;
    Word ontology;
    int language = 0;  ///< version of the rule language
};

struct Service {
    Word id;
    std::string label;
};

/// Findings that share a counting key count once.
struct CountingKey {
    Word id;
    KeyKind kind = KeyKind::field;
    std::string because;
    std::vector<Word>
        covers;  ///< fields whose minor variants are not counted beside a major of this key
};

struct Classification {
    Word finding;
    Word key;
    FindingClass value = FindingClass::normal_variant;
    std::string because;
    std::vector<Word> sources;
};

/// A finding that the book concludes. Conditions stay unread here: `lib/conditions` reads them.
struct Derivation {
    Word finding;
    yaml::Node when;
    std::string because;
    std::vector<Word> sources;
};

/// One line of a score: its points count when the condition holds.
struct ScoreItem {
    Word item;
    yaml::Node when;
    double points = 1;
};

/// A count of keys (by class) or a sum of points.
struct TallySyntax {
    Word id;
    std::string label;
    std::vector<FindingClass> count;
    std::vector<ScoreItem> score;
    std::vector<Word> sources;
};

/// Items of one kind in a published rule, such as its major criteria; unnamed when there is one
/// kind only.
struct ItemGroup {
    Word name;
    std::vector<ScoreItem> items;
};

struct ConstellationSyntax {
    Word id;
    Word service;
    std::string label;
    std::vector<ItemGroup> groups;
    yaml::Node reached;
    std::string note;
    Strength strength = Strength::study;
    std::vector<Word> sources;
};

/// A first step or a follow-up, written once and referred to by id.
struct Action {
    Word id;
    std::string text;
};

struct Suggestion {
    Word service;
    Urgency urgency = Urgency::routine;
};

/// Something due in a window counted from birth.
struct FollowUp {
    Word action;
    Word from;
    Word to;
};

struct Rule {
    Word id;
    yaml::Node when;
    std::vector<Suggestion> suggest;
    std::vector<Word> first_steps;
    std::vector<FollowUp> follow_up;
    std::vector<Word> essential;  ///< history items whose not being recorded leaves the rule open
    std::string because;
    std::string caution;
    Strength strength = Strength::common_practice;
    std::vector<Word> sources;
};

/// A worked baby with what is expected; read fully by `lib/review`.
struct VignetteSyntax {
    Word id;
    std::string story;
    yaml::Node baby;
    yaml::Node expect;
    std::vector<Word> sources;
    bool published = false;
    bool generated = false;
};

/// What a promise says of the babies it speaks of. Exactly one is given.
struct PromiseOutcome {
    std::vector<Word> suggest;        ///< one of these services is suggested; `any`: some service
    std::vector<Word> never;          ///< none of these is; `any`: no service at all
    std::optional<Urgency> at_least;  ///< with the two above: at this urgency or sooner
    yaml::Node holds;                 ///< a condition that is met
    yaml::Node never_met;             ///< a condition that is never known to be met
    bool keeps_urgency = false;   ///< with `adding`: the urgency of the whole answer does not fall
    bool keeps_services = false;  ///< with `adding`: nor does that of any one service
    Span span;
};

/// A statement that must hold for every possible baby.
struct PromiseSyntax {
    Word id;
    yaml::Node when;  ///< a condition known to be met; every baby when left out
    std::optional<FindingClass>
        for_each;                        ///< one promise a finding of this class, which is present
    std::optional<FindingClass> adding;  ///< the answer before and after such a finding is added
    std::vector<Word> except;            ///< findings of the class that it does not speak of
    bool alone = false;                  ///< nothing else is known to be present
    bool familial = false;               ///< the finding is stated to run in the family
    std::vector<PromiseOutcome> then;
    std::string because;
    std::vector<Word> sources;
};

/// A rulebook as written: every part keeps its place, no name is looked up yet. Out of an image,
/// the parts of its lists are read when they are asked for.
struct Rulebook {
    RulebookHeader header;
    std::vector<Service> services;
    LazyList<CountingKey> keys;
    LazyList<Classification> classes;
    LazyList<Derivation> derived;
    LazyList<TallySyntax> tallies;
    LazyList<ConstellationSyntax> constellations;
    LazyList<Action> actions;
    LazyList<Rule> rules;
    std::vector<PromiseSyntax> promises;
    std::vector<VignetteSyntax> vignettes;
    std::string digest;  ///< SHA-256 of every file but the vignettes
};

/// Reads a rulebook from its files, in the order given; sections may be spread over files. Files
/// below a folder `vignettes/` hold vignettes only and do not enter the digest; files below
/// `releases/` are earlier versions and are left out. Nothing is returned when there are errors;
/// all of them are reported.
std::optional<Rulebook> load_rulebook(std::vector<SourcePtr> const& files,
                                      Diagnostics& diagnostics);

}  // namespace asterism
