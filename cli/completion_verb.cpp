// SPDX-License-Identifier: MIT
#include <fmt/format.h>
#include <fmt/ranges.h>

#include "base/named.h"
#include "case_input.h"
#include "common.h"
#include "exit_code.h"
#include "render/assessment_writers.h"
#include "render/case_writers.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

namespace {

template <class Table>
std::string names(Table const& table) {
    return fmt::format("{}", fmt::join(names_of(table), " "));
}

/// Verbs and formats come from the tables; the options of a verb from its own help, so that they
/// are never stale.
std::string bash_script() {
    return fmt::format(
        R"script(# bash completion of asterism; load it with: source <(asterism completion bash)
_asterism() {{
    local word=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD-1]}} verb=${{COMP_WORDS[1]}}
    local choices=
    COMPREPLY=()
    if [[ $COMP_CWORD -eq 1 ]]; then
        choices="{verbs} --help --version"
    else
        case $before in
        --input|--from) choices="{readers}" ;;
        --to) choices="{writers}" ;;
        --format) [[ $verb == assess ]] && choices="{answers}" || choices="text json" ;;
        *) [[ $word == -* ]] &&
            choices=$("${{COMP_WORDS[0]}}" "$verb" --help 2>/dev/null | grep -oE -- '--[a-z][a-z-]+' | sort -u) ;;
        esac
    fi
    [[ -n $choices ]] && mapfile -t COMPREPLY < <(compgen -W "$choices" -- "$word")
    return 0
}}
complete -o default -F _asterism asterism
)script",
        fmt::arg("verbs", names(all_verbs())), fmt::arg("readers", names(case_readers())),
        fmt::arg("writers", names(case_writers())),
        fmt::arg("answers", names(assessment_writers())));
}

}  // namespace

int completion_verb(std::vector<std::string> const& arguments) {
    Options options("completion", "  source <(asterism completion bash)      in ~/.bashrc\n");
    options.positional("shell", false, "bash").common();
    if (parse_or_help(options, arguments)) return done;
    auto const shell = options.all("shell");
    if (shell.empty() || shell.front() != "bash")
        throw UsageError("completion is there for bash: asterism completion bash");
    return print(bash_script()), done;
}

}  // namespace asterism::cli
