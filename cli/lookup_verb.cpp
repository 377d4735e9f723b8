// SPDX-License-Identifier: MIT
#include <algorithm>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "base/nearest.h"
#include "book.h"
#include "common.h"
#include "exit_code.h"
#include "render/diagnostics_text.h"
#include "render/json.h"
#include "render/lookup.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

int lookup_verb(std::vector<std::string> const& arguments) {
    Options options("lookup",
                    "  asterism lookup low-set ears       by id, label, synonym or HPO id\n"
                    "  asterism lookup HP:0000369 --format json\n");
    options.value("format", "FORMAT", "text or json")
        .positional("words", true, "the name")
        .common();
    if (parse_or_help(options, arguments)) return done;
    bool const json = options.format({"text", "json"}) == "json";
    auto const words = fmt::format("{}", fmt::join(options.all("words"), " "));
    if (words.empty()) throw UsageError("no name given (see asterism lookup --help)");
    Diagnostics diagnostics;
    auto const* const book = load_judging_book(book_paths(options), diagnostics);
    if (!book) return print_problems(diagnostics, lookup_schema, json), invalid_input;
    auto const entries = look_up(*book, words);
    if (entries.empty()) {
        auto const names = book->ontology->finding_names.resolve(words).nearest;
        Word const word{
            words,
            {make_source("<arguments>", words), 0, static_cast<std::uint32_t>(words.size())}};
        report_unresolved(word, "finding", {{}, names}, {}, diagnostics);
        return print_problems(diagnostics, lookup_schema, json), invalid_input;
    }
    print(json ? json_text(lookup_json(words, entries)) : lookup_text(entries));
    return done;
}

}  // namespace asterism::cli
