// SPDX-License-Identifier: MIT
// Pages of codes about what a rulebook or ontology says.
#include "review/codes.h"

#include <iterator>

namespace asterism {

namespace {

constexpr CodePage pages[]{
    {"always-true", "Every baby reaches this number.", "The rule would fire for every baby.",
     "Raise the number.", "{ tally: minors, at-least: 0 } -> { tally: minors, at-least: 3 }"},
    {"bad-norm",
     "A norm does not make sense: rows, numbers or windows are missing or contradict each "
     "other.",
     "Every z-score by it would be wrong.", "Mend the row or key that the message names.",
     "kind: mean-sd without sd -> mean: 50, sd: 2"},
    {"bad-points", "Points are not above 0, or finer than tenths.",
     "Scores are added in tenths so that halves add up exactly.", "Write such as 0.5 or 2.",
     "points: 0.25 -> points: 0.3"},
    {"bad-promise", "The parts of a promise do not go together.",
     "It would promise something other than it says.",
     "Follow the message; DEVELOPERS.md shows the forms.",
     "adding: red-flag, then: { suggest: any } -> then: { keeps: urgency }"},
    {"bad-table", "The table that a user supplies for the norm must carry the norm's name.",
     "The program could not tell which norm the file belongs to.", "Name it as the message says.",
     "table: growth.csv -> table: fenton-2013.csv"},
    {"cycle", "A derived finding, tally or constellation depends on itself.",
     "Its value could not be worked out.",
     "Break the ring: one of the conditions must not ask for it.",
     "derive: a when b, derive: b when a -> derive: a when c"},
    {"history-class", "A history item has a class.",
     "Only what is found on the baby counts; history alone is no anomaly.",
     "Remove the class and ask for the item in a rule.",
     "{ finding: breech, class: minor-variant } -> { present: breech } in a rule"},
    {"is-a-cycle", "A finding is its own ancestor.",
     "Presence passes from child to parent, and would run in a ring.", "Correct one `parent`.",
     "a: parent b, b: parent a -> a: parent b"},
    {"measure-under-none", "A derived finding asks for a measure under `none`.",
     "A number that nobody took would count as met.", "Write the range that is wanted itself.",
     "none: [ { measured: width, mm: { below: 30 } } ] -> { measured: width, mm: { at-least: "
     "30 } }"},
    {"milder-child", "A finding is classed milder than the more general finding above it.",
     "Stating it would count as both, and a reader cannot see which class holds.",
     "Make a benign look-alike a sibling of the worrying finding, or raise its class.",
     "child: minor-variant under red-flag -> a sibling"},
    {"needless-norm", "A norm is named for a number in its own unit.",
     "Norms give z and centile only; the number does not depend on one.",
     "Drop `norm`, or compare `z` or `centile`.",
     "{ measured: weight, norm: fenton-2013, g: { below: 2500 } } -> the same without norm"},
    {"never-soft", "A measure that may decide alone is marked soft.",
     "Marking it soft would silence rules that must stand alone.", "Remove `soft`.",
     "{ measure: head-circumference, soft: true } -> without soft"},
    {"no-sides", "The finding has no left and right, but a side is asked for or given.",
     "The side would be lost.", "Drop the side, or mark the finding `laterality: paired`.",
     "{ present: cleft-palate, side: left } -> { present: cleft-palate }"},
    {"no-source", "The list of sources is empty.", "Clinical content must say what it rests on.",
     "Name a source of the bibliography, or write `common-practice`.",
     "sources: [] -> sources: [common-practice]"},
    {"no-vignette", "No vignette expects the rule.", "Nobody would notice if it stopped working.",
     "Write a baby that reaches it and one just short of it.",
     "rule: eye-sign without a baby -> by: [eye-sign] in a vignette"},
    {"not-history", "The finding is not a history item, but stands where only those may.",
     "Essential items are asked, not examined; a finding there would never be asked.",
     "Name a finding of a step in a region with `history: true`, or of a step with `result: "
     "true`.",
     "essential: [slant] -> essential: [breech]"},
    {"rests-on-soft-measure", "A referral rests on one or two soft measures alone.",
     "Soft measures vary with the observer; alone they send healthy babies to clinics.",
     "Ask for something else beside them.",
     "when: { measured: ear-length, z: { below: -2 } } -> all: [ that, { tally: minors, "
     "at-least: 2 } ]"},
    {"silent-red-flag", "A red flag alone suggests no service.",
     "The most dangerous findings must never depend on something else being known.",
     "Give it a rule whose condition is its plain presence.",
     "class: red-flag without a rule -> when: { present: white-pupil }"},
    {"two-keys", "A finding and the more general one above it have different counting keys.",
     "One thing seen would count twice.", "Give both the same key.",
     "key: lids under key: eye -> key: eye in both"},
    {"uncited-source", "Nothing cites the source.",
     "A bibliography that lists more than was used misleads a reader about the evidence.",
     "Cite it where it was used, or remove it.",
     "{ source: old-2001, ... } cited nowhere -> removed"},
    {"unclassed", "The book gives the finding no class.",
     "It could be stated, and would silently mean nothing.",
     "Class it, or give it children that are classed.",
     "finding: nubbin without class -> { finding: nubbin, class: normal-variant, ... }"},
    {"unit-mismatch", "A unit accepted on input does not convert to the measure's own unit.",
     "Input in that unit would be read wrongly.", "Remove the unit, or correct `unit`.",
     "unit: mm, units: [mm, kg] -> units: [mm, cm]"},
    {"unreachable", "The condition asks for more parts than it has.", "The rule would never fire.",
     "Lower the number, or add conditions.",
     "{ at-least: 3, of: [a, b] } -> { at-least: 2, of: [a, b] }"},
    {"unused-table", "A table lies among the files, but no norm reads it.",
     "Its numbers are thought to count and do not.", "Remove it, or name it in a norm.",
     "old-growth.csv -> removed"},
    {"vignette-fails", "A vignette expects something else than the book says.",
     "Either the book or the expectation is wrong.",
     "Run `asterism assess` on the case, decide which is right, and change that one.",
     "verdict: suggested for a baby whom no rule fits -> not-suggested"},
    {"weak-source",
     "The strength claims a guideline or study, but only `common-practice` is cited.",
     "A reader would trust the rule more than its evidence allows.",
     "Cite the guideline or study, or lower the strength.",
     "strength: guideline, sources: common-practice -> strength: common-practice"},
};

}  // namespace

std::vector<CodePage> const& code_pages_of_book() {
    static std::vector<CodePage> const all(std::begin(pages), std::end(pages));
    return all;
}

}  // namespace asterism
