// SPDX-License-Identifier: MIT
#include "batch/batch_answers.h"

#include <fmt/format.h>

namespace asterism::batch {

std::string to_text(Rulebook const& book, std::size_t service, ServiceAnswer const& answer) {
    auto text = fmt::format("{}: {}", book.services[service].id.text, to_text(answer.verdict));
    if (answer.urgency) text += fmt::format(" {}", to_text(*answer.urgency));
    if (answer.may_rise_to) text += fmt::format(", may rise to {}", to_text(*answer.may_rise_to));
    if (answer.if_rest_normal) text += fmt::format(", else {}", to_text(*answer.if_rest_normal));
    return text;
}

std::vector<std::string> differences(Rulebook const& book, Answers const& fast,
                                     Answers const& engine) {
    std::vector<std::string> lines;
    for (std::size_t i = 0; i < engine.size(); ++i) {
        if (fast[i] == engine[i]) continue;
        lines.push_back(fmt::format("fast {} | engine {}", to_text(book, i, fast[i]),
                                    to_text(book, i, engine[i])));
    }
    return lines;
}

bool same(Answers const& answers, std::vector<oracle::ServiceAnswer> const& naive) {
    if (answers.size() != naive.size()) return false;
    for (std::size_t i = 0; i < answers.size(); ++i) {
        auto const& a = answers[i];
        auto const& b = naive[i];
        std::optional<std::string> const rest =
            a.if_rest_normal ? std::optional(std::string(to_text(*a.if_rest_normal)))
                             : std::nullopt;
        if (to_text(a.verdict) != b.verdict || a.urgency != b.urgency ||
            a.may_rise_to != b.may_rise_to || rest != b.if_rest_normal)
            return false;
    }
    return true;
}

}  // namespace asterism::batch
