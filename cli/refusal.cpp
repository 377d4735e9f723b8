// SPDX-License-Identifier: MIT
#include "refusal.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "render/diagnostics_text.h"
#include "render/escape.h"
#include "render/json.h"
#include "terminal.h"

namespace asterism::cli {

nlohmann::ordered_json refusal_json(std::vector<Evidence> const& flags,
                                    Diagnostics const& diagnostics) {
    using Json = nlohmann::ordered_json;
    Json envelope{{"schema", "asterism.assessment/1"}, {"recognised_red_flags", Json::array()}};
    for (auto const& flag : flags) envelope["recognised_red_flags"].push_back(evidence_json(flag));
    envelope["diagnostics"] = diagnostics_json(diagnostics);
    return envelope;
}

std::string red_flag_text(std::vector<Evidence> const& flags) {
    std::string text;
    if (!flags.empty()) text += "Recognised despite the errors, act on these:\n";
    for (auto const& flag : flags)
        text += fmt::format("  - red flag: {} ({})\n", flag.label, terminal_safe(flag.as_written));
    return text;
}

void report_refusal(Diagnostics const& diagnostics) {
    report("no verdict is given until these are mended:\n" + diagnostics_text(diagnostics));
}

}  // namespace asterism::cli
