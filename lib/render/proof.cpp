// SPDX-License-Identifier: MIT
#include "render/proof.h"

#include <algorithm>
#include <sstream>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "render/escape.h"

namespace asterism {

namespace {

constexpr auto meaning =
    "`holds`: no baby breaks it, however much or little of the baby is known. Proven of the book, "
    "not of\n"
    "medicine: whether a promise is right is for clinicians to say. Decision support for trained "
    "clinicians;\n"
    "nothing here is a diagnosis.\n";

std::string indented(std::string const& text, std::string_view margin) {
    std::string result;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);)
        result += fmt::format("{}{}\n", margin, line);
    return result;
}

std::string details(ProofView const& proof) {
    std::string text;
    if (proof.result == "holds") return text;
    text += fmt::format("    {}\n    {}\n", proof.place.place(), proof.because);
    if (!proof.why_not.empty()) text += fmt::format("    not proven: {}\n", proof.why_not);
    if (proof.case_text.empty()) return text;
    auto const about = proof.finding.empty() ? "" : fmt::format(" (about {})", proof.finding);
    text += fmt::format("    the book says{}: {}\n    of this baby:\n", about, proof.said);
    return text + indented(proof.case_text, "      ");
}

std::size_t count(std::vector<ProofView> const& proofs, std::string_view result) {
    return static_cast<std::size_t>(std::count_if(
        proofs.begin(), proofs.end(), [&](ProofView const& p) { return p.result == result; }));
}

}  // namespace

std::string proof_text(std::vector<ProofView> const& proofs) {
    std::string text;
    for (auto const& proof : proofs) {
        text += fmt::format("{:<11}{} ({} ms)\n", proof.result, proof.id, proof.ms);
        text += details(proof);
    }
    text +=
        fmt::format("\n{} promises: {} hold, {} broken, {} not proven\n", proofs.size(),
                    count(proofs, "holds"), count(proofs, "broken"), count(proofs, "not-proven"));
    return terminal_safe(text + meaning, true);
}

nlohmann::ordered_json proof_json(std::vector<ProofView> const& proofs) {
    auto list = nlohmann::ordered_json::array();
    for (auto const& proof : proofs) {
        auto const optional = [](std::string const& text) {
            return text.empty() ? nlohmann::ordered_json() : nlohmann::ordered_json(text);
        };
        list.push_back({{"id", proof.id},
                        {"result", proof.result},
                        {"ms", proof.ms},
                        {"place", proof.place.place()},
                        {"because", proof.because},
                        {"finding", optional(proof.finding)},
                        {"said", optional(proof.said)},
                        {"counterexample", optional(proof.case_text)},
                        {"why_not", optional(proof.why_not)}});
    }
    return {{"schema", prove_schema},
            {"promises", std::move(list)},
            {"diagnostics", nlohmann::ordered_json::array()}};
}

}  // namespace asterism
