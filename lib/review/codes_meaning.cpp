// SPDX-License-Identifier: MIT
// Pages of codes about rules that say less than they seem to.
#include "review/codes.h"

#include <iterator>

namespace asterism {

namespace {

constexpr CodePage pages[]{
    {"always-fires", "Every possible baby meets the condition, even one of whom nothing is known.",
     "A suggestion that everybody gets says nothing of this baby.", "Add what must be present.",
     "{ tally: minors, at-most: 50 } where only 12 can count -> { tally: minors, at-most: 5 }"},
    {"implied",
     "Whenever the rule is met, another suggests each of its services as soon or sooner.",
     "The rule changes no answer; it may be a leftover, or its urgency may be a slip.",
     "Remove it, raise its urgency, or keep it for its wording.",
     "narrow: routine inside wide: urgent -> narrow: same-day"},
    {"never-decisive", "The rule says the same for every baby with and without this part.",
     "A reader believes that the part matters; usually a more specific finding already says "
     "it.",
     "Remove the part, or correct what it was meant to ask.",
     "all: [ { present: opaque }, { present: lens } ] where opaque lies below lens -> { "
     "present: opaque }"},
    {"never-fires", "No possible baby meets the rule: its conditions exclude each other.",
     "A reader counts on a referral that can never come.", "Remove the contradiction, or the rule.",
     "all: [ { present: slant }, { absent: slant } ] -> { present: slant }"},
    {"never-met", "No possible baby meets this part of a condition, although the whole can be met.",
     "The part does nothing, and what it was meant for goes unnoticed.",
     "Correct the contradiction in it, or remove it.",
     "any: [ a, all: [ b, absent b ] ] -> any: [ a, b ]"},
    {"never-reached", "No possible baby reaches the constellation.",
     "It looks as if a pattern were watched for, and it is not.",
     "Lower the number, add items, or remove it.", "at-least: 5 of four items -> at-least: 3"},
    {"no-effect",
     "A minor variant or major anomaly that no tally counts and no condition asks for.",
     "Its class promises that it matters, and it changes no answer.",
     "Count its class in a tally, or ask for the finding.",
     "class: minor-variant in a book without tallies -> { tally: minors, count: "
     "minor-variant }"},
    {"overlap",
     "Whenever the rule is met, another one is met too and suggests the same service later.",
     "This is how a milder and a sharper rule work together; it is only noted.",
     "Nothing, if both are wanted.", "narrow: same-day inside wide: routine"},
    {"repeated-condition", "The same condition stands twice in one list.",
     "In `all` and `any` the second does nothing; in a count one thing counts twice.",
     "Remove one, or correct a slip of the pen.",
     "any: [ { present: a }, { present: a } ] -> { present: a }"},
    {"same-condition", "Two rules have the same condition.",
     "A change to one is easily forgotten in the other.", "Write one rule with both suggestions.",
     "rule a and rule b, both when: { present: slant } -> one rule, two suggestions"},
    {"suggested-twice", "A rule suggests the same service twice.",
     "Only the sooner urgency counts.", "Keep one.",
     "suggest: [ genetics urgent, genetics routine ] -> suggest: genetics urgent"},
    {"unused-action", "No rule has the action as first step or follow-up.", "It is never printed.",
     "Use it, or remove it.", "{ action: scan } -> first-steps: [scan]"},
    {"unused-constellation", "No rule asks for the constellation.", "Reaching it suggests nothing.",
     "Write a rule with it as condition.",
     "{ constellation: triangle } -> when: { constellation: triangle }"},
    {"unused-derivation", "The derived finding has no class, and no condition asks for it.",
     "It is concluded and then forgotten.", "Class it, or ask for it in a rule.",
     "derive: tall -> { finding: tall, class: minor-variant }"},
    {"unused-key", "No class has the counting key.", "A key without findings counts nothing.",
     "Use it, or remove it.", "{ key: chest, kind: system } -> removed"},
    {"unused-service", "No rule suggests the service and no constellation is meant for it.",
     "Readers believe that the book watches for it.", "Write its rule, or remove the service.",
     "{ service: cardiology } -> removed"},
    {"unused-tally", "No condition asks for the tally.",
     "It is counted and printed, but decides nothing.",
     "Ask for it in a rule, or keep it as information for the reader.",
     "{ tally: majors } -> { tally: majors, at-least: 2 } in a rule"},
};

}  // namespace

std::vector<CodePage> const& code_pages_of_meaning() {
    static std::vector<CodePage> const all(std::begin(pages), std::end(pages));
    return all;
}

}  // namespace asterism
