// SPDX-License-Identifier: MIT
#include <iterator>

#include "base/digest.h"
#include "rulebook/release.h"
#include "rulebook/rulebook.h"
#include "rulebook/sections.h"
#include "yaml/read.h"

namespace asterism {

namespace {

bool holds_vignettes(SourcePtr const& file) {
    // Only a folder of exactly this name: `old-vignettes/` is content and enters the digest.
    auto const& name = file->name();
    return name.starts_with("vignettes/") || name.find("/vignettes/") != std::string::npos;
}

template <class List, class T>
void move_into(List& target, std::vector<T>& part) {
    std::move(part.begin(), part.end(), std::back_inserter(target));
}

void merge(Rulebook& book, RulebookSections& part, Diagnostics& diagnostics) {
    if (part.header && !book.header.id.empty()) {
        diagnostics.error("second-header", part.header->id.span, "a second `rulebook` header");
    } else if (part.header) {
        book.header = std::move(*part.header);
    }
    move_into(book.services, part.services);
    move_into(book.keys, part.keys);
    move_into(book.classes, part.classes);
    move_into(book.derived, part.derived);
    move_into(book.tallies, part.tallies);
    move_into(book.constellations, part.constellations);
    move_into(book.actions, part.actions);
    move_into(book.rules, part.rules);
    move_into(book.promises, part.promises);
    move_into(book.vignettes, part.vignettes);
}

/// False when the header may stand in the file, but could not be read: that is told already.
bool read_file(SourcePtr const& file, Rulebook& book, Diagnostics& diagnostics) {
    auto const node = yaml::read_yaml(file, diagnostics);
    if (!node) return file->text().find("rulebook:") == std::string_view::npos;
    RulebookSections sections;
    rulebook_file_table().read(*node, sections, diagnostics);
    if (holds_vignettes(file) && node->entries.size() != (node->find("vignettes") ? 1u : 0u)) {
        diagnostics.error("not-a-vignette", node->span,
                          "a file under vignettes/ holds `vignettes` only",
                          "move the rest out: it would not enter the book's digest");
    }
    bool const lost = node->find("rulebook") && !sections.header;
    merge(book, sections, diagnostics);
    return !lost;
}

}  // namespace

std::vector<SourcePtr> content_of_book(std::vector<SourcePtr> const& files) {
    auto content = files_of_book(files);
    std::erase_if(content, holds_vignettes);
    return content;
}

std::string digest_of_book(std::vector<SourcePtr> const& files) {
    return digest(content_of_book(files));
}

std::optional<Rulebook> load_rulebook(std::vector<SourcePtr> const& files,
                                      Diagnostics& diagnostics) {
    Diagnostics problems;
    Rulebook book;
    bool whole = true;
    for (auto const& file : files_of_book(files)) whole = read_file(file, book, problems) && whole;
    if (whole && book.header.id.empty()) {
        problems.error("missing-header", files.empty() ? Span{} : Span{files.front(), 0, 1},
                       "no file has the `rulebook` header");
    }
    book.digest = digest_of_book(files);
    diagnostics.append(problems);
    if (problems.has_errors()) return std::nullopt;
    return book;
}

}  // namespace asterism
