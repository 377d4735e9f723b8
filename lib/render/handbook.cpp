// SPDX-License-Identifier: MIT
#include "render/handbook.h"

#include <algorithm>
#include <map>

#include <fmt/format.h>

#include "base/fold.h"
#include "render/assessment_words.h"
#include "render/handbook_parts.h"

namespace asterism {

namespace {

HandbookSection about_chapter() {
    HandbookSection chapter{"about", "How to read this booklet", {}, {}, {}, true};
    chapter.paragraphs = {
        "This is what the rulebook says, written for people who examine newborns and for those who "
        "edit the book. It is made from the same files that judge a baby, so that nothing here can "
        "differ from what the program does.",
        std::string(safety_text())};
    auto const explain = [&](std::string const& id, FindingClass value, std::string text) {
        HandbookEntry entry;
        entry.anchor = "class-" + id;
        entry.title = capital(std::string(class_words(value)));
        entry.badge = to_text(value);
        entry.badge_words = class_words(value);
        entry.paragraphs.push_back(std::move(text));
        chapter.entries.push_back(std::move(entry));
    };
    explain("red-flag", FindingClass::red_flag,
            "Alone enough for a service, whatever else is or is not there.");
    explain("major", FindingClass::major_anomaly,
            "Matters for health or looks by itself; counted by organ system.");
    explain("minor", FindingClass::minor_variant,
            "Seldom matters by itself and is found in at most four in a hundred; counted by the "
            "field in which it arises.");
    explain("normal", FindingClass::normal_variant, "Common or passing. Never counted.");
    return chapter;
}

std::string without_ticks(std::string text) {
    text.erase(std::remove(text.begin(), text.end(), '`'), text.end());
    return text;
}

/// The text as the beginning of a sentence that goes on: without a stop at its end.
std::string_view unstopped(std::string_view text) {
    return text.ends_with('.') ? text.substr(0, text.size() - 1) : text;
}

/// `none` stands in the bibliography where a source has no author or journal.
std::string citation_text(Citation const& c) {
    std::string text;
    if (c.authors != "none") text += fmt::format("{}. ", unstopped(c.authors));
    text += fmt::format("{}. ", unstopped(c.title));
    if (c.journal == "none") return text.substr(0, text.size() - 1);
    text += fmt::format("{} {}", c.journal, c.year);
    if (!c.pages.empty()) text += ";" + c.pages;
    return text + ".";
}

/// The letter under which a name stands; `#` for anything that is none.
std::string letter_of(std::string const& folded) {
    bool const letter = !folded.empty() && folded[0] >= 'a' && folded[0] <= 'z';
    return letter ? capital(folded.substr(0, 1)) : "#";
}

}  // namespace

std::string handbook_stop(HandbookLink const& link, bool last) {
    if (link.text.ends_with('.')) return " ";
    return last ? ". " : ", ";
}

HandbookSection sources_chapter(HandbookPlan const& plan) {
    HandbookSection chapter{"sources", "Sources", {}, {}, {}, true};
    chapter.paragraphs = {
        "What was read of each is said: the full text, its abstract, a quotation elsewhere "
        "(secondary), or nothing again for this book (memory)."};
    for (auto const& c : plan.book.ontology->citations) {
        HandbookEntry entry;
        entry.anchor = "source-" + c.id.text;
        entry.title = c.id.text;
        entry.paragraphs.push_back(citation_text(c));
        if (!c.note.empty()) entry.paragraphs.push_back(c.note);
        if (!c.doi.empty()) entry.rows.push_back({"DOI", {{c.doi, ""}}});
        if (!c.read.empty()) entry.rows.push_back({"Read", {{c.read, ""}}});
        chapter.entries.push_back(std::move(entry));
    }
    return chapter;
}

HandbookSection changes_chapter(std::vector<ReleaseNotes> const& notes) {
    HandbookSection chapter{"changes", "Changes", {}, {}, {}, false};
    for (auto const& version : notes) {
        HandbookEntry entry;
        entry.anchor = "version-" + version.version.text;
        entry.title = version.version.text;
        if (!version.day.empty()) entry.badge_words = "in force from " + version.day;
        for (auto const& change : version.changes) {
            entry.paragraphs.push_back(without_ticks(change));
        }
        chapter.entries.push_back(std::move(entry));
    }
    return chapter;
}

std::vector<std::pair<std::string, std::vector<HandbookLink>>> index_of(HandbookPlan const& plan) {
    std::map<std::string, std::map<std::string, HandbookLink>>
        letters;  // by letter, by folded name
    auto const add = [&](std::string const& name, FindingId id) {
        auto const folded = fold(name);
        auto const number = plan.finding_numbers.at(id);
        // The same name for two findings stands twice, told apart by their numbers.
        letters[letter_of(folded)].emplace(
            folded + " " + number, HandbookLink{name + ", " + number, plan.finding(id).anchor});
    };
    for (auto const id : plan.findings) {
        auto const& finding = plan.book.ontology->at(id);
        add(finding.label, id);
        for (auto const& synonym : finding.synonyms) add(synonym.text, id);
        for (auto const& name : finding.ambiguous) add(name.text, id);
    }
    std::vector<std::pair<std::string, std::vector<HandbookLink>>> result;
    for (auto& [letter, names] : letters) {
        std::vector<HandbookLink> links;
        for (auto& [folded, link] : names) links.push_back(std::move(link));
        result.emplace_back(letter, std::move(links));
    }
    return result;
}

Handbook handbook(CompiledRulebook const& book, std::vector<ReleaseNotes> const& notes) {
    HandbookPlan const plan(book);
    auto const& header = book.book->header;
    Handbook result;
    result.title = header.title;
    result.about = {fmt::format("Rulebook {} {}, in force from {}", header.id.text, header.version,
                                header.effective.text),
                    fmt::format("SHA-256 {}", book.book->digest),
                    fmt::format("Ontology {} {}, SHA-256 {}", book.ontology->header.id.text,
                                book.ontology->header.version, book.ontology->digest)};
    for (auto& chapter : {about_chapter(), findings_chapter(plan), counting_chapter(plan),
                          derived_chapter(plan), constellations_chapter(plan), rules_chapter(plan),
                          promises_chapter(plan), sources_chapter(plan), changes_chapter(notes)}) {
        bool const empty = chapter.entries.empty() && chapter.sections.empty();
        if (!empty) result.chapters.push_back(chapter);
    }
    result.index = index_of(plan);
    return result;
}

}  // namespace asterism
