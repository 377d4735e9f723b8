// SPDX-License-Identifier: MIT
#include "book.h"
#include "common.h"
#include "exit_code.h"
#include "render/worksheet.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

int worksheet_verb(std::vector<std::string> const& arguments) {
    Options options(
        "worksheet",
        "  asterism worksheet > baby.yaml     an empty case, head to toe, to fill in\n"
        "  asterism worksheet --format html   a sheet of A4 to print and fill in by hand\n"
        "  asterism assess baby.yaml          reads the case back\n");
    options.value("format", "FORMAT", "yaml or html")
        .value("detail", "HOW-MUCH", "brief, or full: with instructions and findings (yaml)")
        .common();
    if (parse_or_help(options, arguments)) return done;
    bool const html = options.format({"yaml", "html"}) == "html";
    auto const detail = options.get("detail", "brief");
    if (detail != "brief" && detail != "full") {
        throw UsageError("unknown detail `" + detail + "`; accepted: brief, full");
    }
    Diagnostics diagnostics;
    auto const ontology = load_judging_ontology(book_paths(options), diagnostics);
    if (!ontology) return print_problems(diagnostics, "asterism.worksheet/1", false), invalid_input;
    print(html ? worksheet_html(*ontology) : worksheet_yaml(*ontology, detail == "full"));
    return done;
}

}  // namespace asterism::cli
