// SPDX-License-Identifier: MIT
// Pages of codes about names that are unknown, shared or given twice.
#include "review/codes.h"

#include <iterator>

namespace asterism {

namespace {

constexpr CodePage pages[]{
    {"ambiguous-name", "The name belongs to more than one thing.",
     "Picking one silently could judge another baby.", "Write one of the ids in the help line.",
     "findings: [web] -> findings: [webbed-neck]"},
    {"duplicate-id", "Two things of one kind have the same id.",
     "Only one could be meant wherever the id is used.",
     "Rename or remove one; both places are shown.",
     "two rules called eye-sign -> eye-sign and eye-sign-familial"},
    {"missing-header", "No file has the header with id, version and date.",
     "An answer must say which version of the rules gave it.", "Add it, or give the right folder.",
     "a folder with rules alone -> rulebook: { id: ..., version: ..., ... } in book.yaml"},
    {"not-a-vignette", "A file below vignettes/ holds other sections too.",
     "Files there do not enter the digest of the book, so a rule there could change unseen.",
     "Move everything but `vignettes` to another file.",
     "rules: in vignettes/eyes.yaml -> rules: in referrals/eyes.yaml"},
    {"other-ontology", "The book speaks of another ontology than the one loaded.",
     "The same id may mean something else there.",
     "Give the ontology that belongs to the book with --ontology.",
     "ontology: newborn-2 -> ontology: newborn"},
    {"second-header", "A second header of a book or ontology.",
     "A book has one id, one version and one date.",
     "Remove one, or move the other book to another folder.", "two files with `rulebook:` -> one"},
    {"shared-name", "Two findings share a name without saying so.",
     "Typing the name would silently mean one of them.",
     "List the name under `ambiguous` in both findings, or drop it from one.",
     "synonyms: [web] twice -> ambiguous: [web] in both"},
    {"unknown-action", "The book has no such action.",
     "The first step or follow-up would print nothing.",
     "Take the nearest id, or add it to `actions`.", "first-steps: [scna] -> first-steps: [scan]"},
    {"unknown-column", "The table has a column that is not one of those read.",
     "What stands in it would be lost.", "Take the name in the help line, or remove the column.",
     "finding list -> findings"},
    {"unknown-condition", "No kind of condition starts with this word.",
     "The rule could not be judged.",
     "Use present, absent, all, any, none, at-least with of, tally, constellation, measured, "
     "age, gestation or sex.",
     "when: { presnet: slant } -> when: { present: slant }"},
    {"unknown-constellation", "The book has no such constellation.",
     "The condition could not be judged.", "Take the nearest id.",
     "{ constellation: triangel } -> { constellation: triangle }"},
    {"unknown-finding", "No finding has this name; in a rulebook only ids count.",
     "A rule on a misspelt finding would never fire.",
     "Take the nearest name in the help line, or add the finding to the ontology first.",
     "{ present: low-set-eras } -> { present: low-set-ears }"},
    {"unknown-grade", "The finding has no such grade.",
     "The condition or statement would mean nothing.",
     "Take one of the grades that the ontology lists for the finding.",
     "{ present: digit, grade: huge } -> { present: digit, grade: bony }"},
    {"unknown-key", "No such key of a map, or no such counting key, is known here.",
     "A misspelt key would be ignored, and what it says lost.",
     "Take the name in the help line; `asterism schema` lists all keys.",
     "becuase: x -> because: x"},
    {"unknown-measure", "No measure has this name.", "The number would be compared with nothing.",
     "Take the nearest name in the help line.",
     "measured: head-circumfrence -> measured: head-circumference"},
    {"unknown-norm", "No norm has this name.", "The z-score or centile could not be computed.",
     "Take the nearest name, or leave `norm` out for the preferred norm.",
     "norm: fention-2013 -> norm: fenton-2013"},
    {"unknown-region", "No region has this name.",
     "The step would belong nowhere on the worksheet.", "Take the nearest name, or add the region.",
     "region: eyse -> region: eyes"},
    {"unknown-rule", "The book has no such rule.",
     "The vignette would expect what can never happen.",
     "Take the nearest id; rules may have been renamed.", "by: [white-pupl] -> by: [white-pupil]"},
    {"unknown-service", "The book lists no such service.", "The referral would reach nobody.",
     "Take the nearest id, or add the service to `services`.",
     "service: genetcs -> service: genetics"},
    {"unknown-source", "The bibliography has no such source.",
     "A reader could not look up what the statement rests on.",
     "Take the nearest id, add the source to the ontology, or write `common-practice`.",
     "sources: [smth-2020] -> sources: [smith-2020]"},
    {"unknown-state", "The state of a finding is none of present, absent, unsure.",
     "A guess could turn an absent finding into a present one.", "Write one of the three.",
     "state: yes -> state: present"},
    {"unknown-step", "No exam step has this name.",
     "What was examined decides whether silence means absent or not known.",
     "Take the nearest name in the help line.", "examined: [red-relfex] -> examined: [red-reflex]"},
    {"unknown-tally", "The book has no such tally.", "The count could not be compared.",
     "Take the nearest id; a constellation is a tally too, its groups are NAME/GROUP.",
     "{ tally: minor, at-least: 3 } -> { tally: minors, at-least: 3 }"},
    {"unknown-value", "The word is none of those accepted here.",
     "A guess would change class, urgency or meaning.", "Take one of the words in the help line.",
     "urgency: soon -> urgency: urgent"},
};

}  // namespace

std::vector<CodePage> const& code_pages_of_names() {
    static std::vector<CodePage> const all(std::begin(pages), std::end(pages));
    return all;
}

}  // namespace asterism
