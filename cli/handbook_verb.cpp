// SPDX-License-Identifier: MIT
#include "book.h"
#include "common.h"
#include "exit_code.h"
#include "release_shelf.h"
#include "render/diagnostics_text.h"
#include "render/handbook.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

int handbook_verb(std::vector<std::string> const& arguments) {
    Options options(
        "handbook",
        "  asterism handbook > handbook.html                   the built-in book as a booklet\n"
        "  asterism handbook --format markdown > handbook.md\n"
        "  asterism handbook --rulebook rules/newborn --as-of 2026-12-24 > then.html\n");
    options.value("format", "FORMAT", "html (prints as a booklet of A4) or markdown")
        .value("as-of", "DATE", "the book in force on this day; default: the newest")
        .common();
    if (parse_or_help(options, arguments)) return done;
    bool const html = options.format({"html", "markdown"}) == "html";
    Diagnostics diagnostics;
    auto const paths = book_paths(options);
    auto const book = load_book(paths, diagnostics);
    auto const changelog = book ? changelog_of(paths.rulebook, diagnostics) : nullptr;
    auto const notes =
        changelog ? read_release_notes(changelog, diagnostics) : std::vector<ReleaseNotes>{};
    if (!book || diagnostics.has_errors()) {
        return print_problems(diagnostics, "asterism.handbook/1", false), invalid_input;
    }
    report(diagnostics_text(diagnostics));
    auto const booklet = handbook(*book, up_to(notes, book->book->header.version));
    print(html ? handbook_html(booklet) : handbook_markdown(booklet));
    return done;
}

}  // namespace asterism::cli
