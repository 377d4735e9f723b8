// SPDX-License-Identifier: MIT
// Pages of codes about files of decisions and about cases in an audit or a batch.
#include "review/codes.h"

#include <iterator>

namespace asterism {

namespace {

constexpr CodePage pages[]{
    {"bad-json", "A line of the decisions is no JSON object.",
     "The decision would be missing from every table.",
     "Write one object a line, with case, service and referred.",
     "[1] -> {\"case\": \"a1\", \"service\": \"genetics\", \"referred\": true}"},
    {"bad-value", "A value of a decision is of the wrong kind.",
     "Whether the baby was referred would be a guess.", "Write yes or no, or true or false.",
     "referred: maybe -> referred: yes"},
    {"missing-case", "A row does not say whose it is.", "It cannot be joined to any baby.",
     "Fill in the column `case`.", ",genetics,yes -> a1,genetics,yes"},
    {"missing-column", "The decisions lack a column that an audit needs.",
     "Without case, service and referred nothing can be compared.", "Add it to the header.",
     "case,referred -> case,service,referred"},
    {"missing-finding", "A row says a state, side or grade, and of no finding.",
     "What was seen would be lost.", "Fill in the column `finding`, or empty the others.",
     "c1,,absent -> c1,cleft palate,absent"},
    {"missing-service", "A decision does not name a service.",
     "It cannot be compared with a suggestion.", "Name the service, or `none`.",
     "a1,,yes -> a1,genetics,yes"},
    {"rows-apart", "Rows of one case stand apart, with another case between.",
     "A verdict on the first rows alone would lack the later findings.",
     "Sort the table by its column `case`.", "c1, c2, c1 -> c1, c1, c2"},
    {"rows-disagree", "Two rows of a case say different things of the baby.",
     "Which exam day, sex or ward holds would be a guess.",
     "Write it on one row, or the same on each.", "c1,female / c1,male -> c1,female / c1,"},
    {"unreadable-cases", "The table of cases cannot be read beyond this point.",
     "A report on part of a year would mislead.", "Mend the header or the row that is named.",
     "case,finding,colour -> case,finding,state"},
    {"unreadable-file", "The file ends early, or the disk or the archive is damaged.",
     "A report on part of a year would mislead.", "Copy the file again, or pack it anew.",
     "a torn .gz -> a whole one"},
};

}  // namespace

std::vector<CodePage> const& code_pages_of_audits() {
    static std::vector<CodePage> const list(std::begin(pages), std::end(pages));
    return list;
}

}  // namespace asterism
