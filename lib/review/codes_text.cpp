// SPDX-License-Identifier: MIT
// Pages of codes about text, YAML, JSON and the form of values.
#include "review/codes.h"

#include <iterator>

namespace asterism {

namespace {

constexpr CodePage pages[]{
    {"bad-bound", "The bound is not a value of the kind that is compared.",
     "The condition could not be judged.",
     "Write a decimal number for measures, such as 24h for ages, such as 37w0d for gestation.",
     "age: { below: one day } -> age: { below: 24h }"},
    {"bad-csv",
     "The CSV file is malformed on this line: a quote, a column too many or too few, an "
     "unknown column.",
     "Columns that have shifted put a finding on the wrong baby.",
     "Mend the line; text with a comma, quote or line break stands in double quotes.",
     "b1,\"low-set ears -> b1,\"low-set ears\""},
    {"bad-date", "The text is no date.", "Follow-up dates and the version in force depend on it.",
     "Write year, month and day, such as 2026-03-01; the day must exist.",
     "effective: 2026-02-30 -> effective: 2026-03-01"},
    {"bad-duration", "The text is no length of time.",
     "A window of follow-up or an age would be wrong.",
     "Write a number and a unit without a blank: 24h, 3d, 6w.", "from: six weeks -> from: 6w"},
    {"bad-gestation", "The text is no gestation, or leaves days open where they are needed.",
     "Six days more or less move a baby across a cut-off.", "Write weeks and days, such as 37w0d.",
     "from: 37 -> from: 37w0d"},
    {"bad-gzip", "The compressed file cannot be unpacked.", "A part of the cases would be missing.",
     "Copy the file again, or unpack it and give the plain file.",
     "cases.jsonl.gz, cut off -> cases.jsonl.gz, whole"},
    {"bad-number", "The text is not a number with a unit.",
     "A measure without a unit cannot be compared with any norm.",
     "Write a decimal number and a unit, such as 34.5 cm.",
     "head-circumference: big -> head-circumference: 38 cm"},
    {"bad-unit", "The unit is not one that this measure is given in.",
     "Centimetres read as millimetres are wrong by a factor of ten.",
     "Use one of the units in the message; in a rule also `z` or `centile`.",
     "{ measured: width, kg: { above: 3 } } -> { measured: width, mm: { above: 3 } }"},
    {"cannot-read", "The file or folder cannot be read.", "Nothing in it was looked at.",
     "Check the path, and that you may read it.",
     "asterism check rules/newbron -> asterism check rules/newborn"},
    {"duplicate-key", "A key stands twice in one map.",
     "Only one of the two could count, and a reader cannot know which.",
     "Remove one, or join the two values.", "urgency: urgent, urgency: routine -> urgency: urgent"},
    {"empty", "The file of records is empty.",
     "No record can be read, and no answer would look like a normal baby.",
     "Give the file that was meant.", "an export of 0 bytes -> the finished export"},
    {"empty-file", "The file holds nothing, or only comments.",
     "An empty file is nearly always a file that was not saved.",
     "Write its sections, or remove the file.", "# to be done -> rules: [ ... ]"},
    {"empty-range", "No value lies within these bounds.",
     "The condition could never be met, or the window never come.",
     "Swap the bounds, or correct one.", "{ above: 9, below: 5 } -> { above: 5, below: 9 }"},
    {"json-syntax", "JSON cannot be read at this place.", "Everything after the place is unread.",
     "Look for a missing comma, quote or bracket just before the place shown.",
     "{\"findings\": [\"low-set ears\" -> {\"findings\": [\"low-set ears\"]}"},
    {"missing-key", "A key that must stand here is missing.",
     "Each required key answers a question that a reader will ask: what, why, on which "
     "evidence.",
     "Add the key; `asterism schema` and the editor list what each thing takes.",
     "{ rule: a, when: ..., suggest: ... } -> the same with because, strength, sources"},
    {"needless-key", "The key has no meaning beside the others.",
     "It reads as if it did something.", "Remove it, or add the key that it belongs to.",
     "then: { keeps: urgency, at-least: urgent } -> then: { keeps: urgency }"},
    {"not-utf8", "The text holds bytes that are not well-formed UTF-8.",
     "Letters would be read wrongly without anybody noticing.",
     "Save the file as UTF-8; editors call this the encoding of the file.",
     "a file saved as Latin-1 -> the same file saved as UTF-8"},
    {"nul-byte", "A NUL byte stands in the text.",
     "Text files have none: the file is damaged, or is not text at all.",
     "Restore the file, or give the right one.",
     "a picture named book.yaml -> the rulebook itself"},
    {"one-bound", "Exactly one bound is needed, and none or several are given.",
     "It would be unclear which one counts.",
     "Keep one; write a range of a tally as two conditions under `all`.",
     "{ tally: minors } -> { tally: minors, at-least: 3 }"},
    {"one-of", "Exactly one of several keys must be given, and none or more than one is.",
     "With two, it would be unclear which one counts.", "Keep one.",
     "{ tally: t, label: x } -> { tally: t, label: x, count: minor-variant }"},
    {"second-document", "A line of three dashes starts a second document in the file.",
     "Most programs read only the first and drop the rest silently.", "Keep one document a file.",
     "rules: [] --- rules: [] -> two files"},
    {"too-deep", "Values are nested more than 64 levels deep.",
     "No sensible rule needs this, and such a file could exhaust the machine.",
     "Look for brackets that are never closed; otherwise name a part by a derived finding or "
     "a tally.",
     "[[[[[[ ... ]]]]]] -> a derived finding that the rule asks for"},
    {"too-large", "The file is larger than the program reads: 16 MiB for YAML and JSON.",
     "A bound keeps a mistaken file from filling the memory of the machine.",
     "Split the file; for many cases use JSON lines or CSV with `assess --batch`.",
     "a YAML file of 40 MB -> several files, or cases.jsonl"},
    {"wrong-form", "The value has another form than this key takes.",
     "Its content cannot be understood, and guessing would change the rule.",
     "Write what the message expects: a text, a list, a map, a whole or a decimal number, "
     "`true` or `false`.",
     "points: two -> points: 2"},
    {"yaml-alias", "An alias (`*name`) stands for text written elsewhere.",
     "A reader must see a rule whole where it stands, and every value must have one place.",
     "Write the value out.", "when: *eyes -> when: { present: white-pupil }"},
    {"yaml-anchor", "An anchor (`&name`) marks a value for use elsewhere.",
     "A reader must see a rule whole where it stands, and every value must have one place.",
     "Remove the anchor and write the value out where it is used.",
     "when: &eyes { present: white-pupil } -> when: { present: white-pupil }"},
    {"yaml-key", "A key is a list or a map instead of a word.",
     "Keys are names; no key of a rulebook looks like this.",
     "Write a plain word before the colon; the usual cause is a bracket in the wrong place.",
     "{ [a]: b } -> { a: b }"},
    {"yaml-syntax", "YAML cannot be read at this place.",
     "Everything after the place is unread, so its problems stay hidden until this one is "
     "mended.",
     "Look at the line shown and the one above: a bracket or quote left open, a tab, a colon "
     "without a blank.",
     "classes: [ { finding: slant -> classes: [ { finding: slant } ]"},
    {"yaml-tag", "A tag (`!name`) asks for another type of value.",
     "The program knows what each key holds, so a tag can only mislead.", "Remove the tag.",
     "points: !!str 2 -> points: 2"},
};

}  // namespace

std::vector<CodePage> const& code_pages_of_text() {
    static std::vector<CodePage> const all(std::begin(pages), std::end(pages));
    return all;
}

}  // namespace asterism
