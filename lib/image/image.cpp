// SPDX-License-Identifier: MIT
#include "image/image.h"

#include <fmt/format.h>

#include "image/fields_compiled.h"
#include "image/fields_norms.h"
#include "image/fields_ontology.h"
#include "image/fields_rulebook.h"

namespace asterism::image {

namespace {

constexpr std::string_view mark = "asterism image 1\n";

/// The circuit's list of members serves both directions, but only reading changes anything.
void put_circuit(Writer& archive, CompiledRulebook const& book) {
    circuit_fields(archive, const_cast<CompiledRulebook&>(book));
}

Sources sources(std::vector<std::string> const& names, TextOf const& text_of) {
    std::vector<SourcePtr> result;
    for (auto const& name : names) result.push_back(Source::over(name, text_of(name)));
    return std::make_shared<std::vector<SourcePtr> const>(std::move(result));
}

Date effective(Rulebook const& book) {
    auto const date = parse_date(book.header.effective.text);
    if (!date) throw BadImage("the book has no day from which it is in force");
    return *date;
}

}  // namespace

std::string write(CompiledRulebook const& book) {
    Writer body;
    body(*book.ontology, *book.book, *book.standards);
    put_circuit(body, book);
    Writer head;
    head(body.names());
    return fmt::format("{}{}{}", mark, head.bytes(), body.bytes());
}

CompiledRulebook read(std::string_view bytes, TextOf const& text_of) {
    if (!bytes.starts_with(mark)) throw BadImage("this is no image of a rulebook");
    Reader reader(bytes.substr(mark.size()));
    std::vector<std::string> names;
    reader(names);
    reader.set_sources(sources(names, text_of));
    auto const ontology = std::make_shared<Ontology>();
    auto const rulebook = std::make_shared<Rulebook>();
    CompiledRulebook book;
    reader(*ontology, *rulebook);
    book.standards = std::make_shared<norms::Standards const>(norms::load_standards(reader));
    circuit_fields(reader, book);
    if (reader.left() != 0) throw BadImage("the image goes on after its end");
    book.effective = effective(*rulebook);
    book.ontology = ontology;
    book.book = rulebook;
    return book;
}

}  // namespace asterism::image
