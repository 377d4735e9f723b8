// SPDX-License-Identifier: MIT
#include "book.h"
#include "common.h"
#include "exit_code.h"
#include "render/worksheet.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

int worksheet_verb(std::vector<std::string> const& arguments) {
    Options options("worksheet",
                    "  asterism worksheet > baby.yaml     an empty case, head to toe, to fill in\n"
                    "  asterism assess baby.yaml          which then reads it\n");
    options.value("format", "FORMAT", "yaml").common();
    if (parse_or_help(options, arguments)) return done;
    options.format({"yaml"});
    Diagnostics diagnostics;
    auto const ontology = load_ontology(book_paths(options), diagnostics);
    if (!ontology) return print_problems(diagnostics, "asterism.worksheet/1", false), invalid_input;
    print(worksheet_yaml(*ontology));
    return done;
}

}  // namespace asterism::cli
