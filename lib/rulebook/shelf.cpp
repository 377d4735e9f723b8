// SPDX-License-Identifier: MIT
#include "rulebook/shelf.h"

#include <algorithm>

#include <fmt/format.h>

#include "rulebook/sections.h"
#include "yaml/read.h"

namespace asterism {

namespace {

bool may_hold_header(std::string_view text) {
    return text.starts_with("rulebook:") || text.find("\nrulebook:") != std::string_view::npos;
}

void missing_header(std::vector<SourcePtr> const& files, Diagnostics& diagnostics) {
    diagnostics.error("missing-header", files.empty() ? Span{} : Span{files.front(), 0, 1},
                      "no file has the `rulebook` header");
}

std::optional<RulebookHeader> read_header(std::vector<SourcePtr> const& files,
                                          Diagnostics& diagnostics) {
    for (auto const& file : files) {
        if (!may_hold_header(file->text())) continue;
        auto const node = yaml::read_yaml(file, diagnostics);
        if (!node) return std::nullopt;
        RulebookSections sections;
        rulebook_file_table().read(*node, sections, diagnostics);
        if (sections.header) return sections.header;
    }
    missing_header(files, diagnostics);
    return std::nullopt;
}

void add_working(RulebookHeader const& header, std::vector<ShelvedBook>& books,
                 Diagnostics& diagnostics) {
    auto const date = parse_date(header.effective.text);
    if (!date) return diagnostics.error("bad-date", header.effective.span, date.error());
    bool const released = std::any_of(books.begin(), books.end(), [&](ShelvedBook const& book) {
        return book.version == header.version;
    });
    if (released) return;  // the release stands for it
    if (!books.empty() && *date <= books.back().effective) {
        return diagnostics.error(
            "effective-not-later", header.effective.span,
            fmt::format("`{}` is not later than {}, from which the released version `{}` is in "
                        "force",
                        header.effective.text, to_text(books.back().effective),
                        books.back().version));
    }
    books.push_back({header.version, *date, std::nullopt});
}

std::string difference(RulebookHeader const& header, std::string const& digest,
                       Release const& release) {
    if (header.version != release.version.text) {
        return fmt::format("its header says version `{}`", header.version);
    }
    if (header.effective.text != release.effective.text) {
        return fmt::format("its header says `{}`", header.effective.text);
    }
    return digest == release.digest.text ? std::string()
                                         : fmt::format("its files have the digest {}", digest);
}

/// False, and reported, when a released book is not the one listed.
bool is_listed(RulebookHeader const& header, std::string const& digest, ShelvedBook const& book,
               Diagnostics& diagnostics) {
    auto const changed = book.release ? difference(header, digest, *book.release) : std::string();
    if (changed.empty()) return true;
    diagnostics.error(
        "release-changed", book.release->version.span,
        fmt::format("the released book `{}` is not the one listed: {}", book.version, changed),
        "a released book never changes: restore its files, or release a new "
        "version");
    return false;
}

/// Adds what a file says of a book's outline, when it may say anything.
void add_outline(SourcePtr const& file, BookOutline& outline, Diagnostics& diagnostics) {
    auto const text = file->text();
    if (!may_hold_header(text) && text.find("services") == text.npos) return;
    auto const node = yaml::read_yaml(file, diagnostics);
    if (!node) return;
    RulebookSections sections;
    rulebook_file_table().read(*node, sections, diagnostics);
    if (sections.header) outline.header = *sections.header;
    outline.services.insert(outline.services.end(), sections.services.begin(),
                            sections.services.end());
}

}  // namespace

std::optional<Shelf> Shelf::open(Files files, Diagnostics& diagnostics) {
    Diagnostics problems;
    Shelf shelf(std::move(files));
    auto const lists = shelf.files_(std::string(release_list_name));
    if (!lists.empty()) {
        for (auto& release : read_releases(lists.front(), problems)) {
            shelf.books_.push_back({release.version.text, release.date, release});
        }
    }
    auto const header = read_header(shelf.files_(""), problems);
    if (header && !problems.has_errors()) add_working(*header, shelf.books_, problems);
    diagnostics.append(problems);
    return problems.has_errors() ? std::nullopt : std::optional(std::move(shelf));
}

ShelvedBook const* Shelf::in_force(Date day) const {
    ShelvedBook const* found = nullptr;
    for (auto const& book : books_) {
        if (book.effective <= day) found = &book;
    }
    return found;
}

ShelvedBook const* Shelf::find(std::string_view version) const {
    auto const found = std::find_if(books_.begin(), books_.end(), [&](ShelvedBook const& book) {
        return book.version == version;
    });
    return found == books_.end() ? nullptr : &*found;
}

std::vector<SourcePtr> Shelf::files_of(ShelvedBook const& book) const {
    return files_(book.release ? fmt::format("{}{}/", releases_folder, book.version)
                               : std::string());
}

std::shared_ptr<Rulebook const> Shelf::load(std::vector<SourcePtr> const& files,
                                            ShelvedBook const& book, Diagnostics& diagnostics) {
    auto loaded = load_rulebook(files, diagnostics);
    if (!loaded || !is_listed(loaded->header, loaded->digest, book, diagnostics)) return nullptr;
    return std::make_shared<Rulebook const>(std::move(*loaded));
}

std::shared_ptr<Rulebook const> Shelf::load(ShelvedBook const& book,
                                            Diagnostics& diagnostics) const {
    return load(files_of(book), book, diagnostics);
}

std::shared_ptr<Rulebook const> Shelf::load_to_judge(ShelvedBook const& book,
                                                     Diagnostics& diagnostics) const {
    return load(content_of_book(files_of(book)), book, diagnostics);
}

std::optional<BookOutline> Shelf::outline(ShelvedBook const& book, Diagnostics& diagnostics) const {
    auto const files = files_of(book);
    Diagnostics problems;
    BookOutline outline;
    for (auto const& file : content_of_book(files)) add_outline(file, outline, problems);
    if (outline.header.id.empty() && !problems.has_errors()) missing_header(files, problems);
    outline.digest = digest_of_book(files);
    bool const fine =
        !problems.has_errors() && is_listed(outline.header, outline.digest, book, problems);
    diagnostics.append(problems);
    return fine ? std::optional(std::move(outline)) : std::nullopt;
}

ShelvedBook const* in_force(Shelf const& shelf, Word const& day, Diagnostics& diagnostics) {
    auto const date = parse_date(day.text);
    if (!date) return diagnostics.error("bad-date", day.span, date.error()), nullptr;
    auto const* const book = shelf.in_force(*date);
    if (!book) {
        auto const& first = shelf.books().front();
        diagnostics.error(
            "no-book-in-force", day.span,
            fmt::format("no version of the rulebook was in force on {}", to_text(*date)),
            fmt::format("the first, {}, is in force from {}", first.version,
                        to_text(first.effective)));
    }
    return book;
}

}  // namespace asterism
