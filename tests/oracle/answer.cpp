// SPDX-License-Identifier: MIT
#include "oracle/answer.h"

#include <fmt/format.h>

namespace asterism::oracle {

namespace {

void differ(std::vector<std::string>& lines, std::string_view what, std::string_view oracle,
            std::string_view engine) {
    if (oracle != engine)
        lines.push_back(fmt::format("{}: oracle {}, engine {}", what, oracle, engine));
}

std::string to_text(Bounds const& bounds) {
    return fmt::format("{} to {} tenths, {} printed", bounds.low, bounds.high, bounds.counted);
}

void compare_tallies(std::vector<std::string>& lines, Answer const& oracle, Answer const& engine,
                     Rulebook const& book) {
    if (engine.tallies.size() != oracle.tallies.size()) {
        lines.push_back("the engine has other tallies");
        return;
    }
    auto const names = tally_names(book);
    for (std::size_t i = 0; i < names.size(); ++i)
        differ(lines, "tally " + names[i], to_text(oracle.tallies[i]), to_text(engine.tallies[i]));
}

}  // namespace

std::vector<std::string> tally_names(Rulebook const& book) {
    std::vector<std::string> names;
    for (auto const& tally : book.tallies) names.push_back(tally.id.text);
    for (auto const& constellation : book.constellations) {
        names.push_back(constellation.id.text);
        for (auto const& group : constellation.groups) {
            if (!group.name.empty()) names.push_back(constellation.id.text + "/" + group.name.text);
        }
    }
    return names;
}

std::string to_text(ServiceAnswer const& answer) {
    std::string text = answer.verdict;
    if (answer.urgency) text += fmt::format(" {}", asterism::to_text(*answer.urgency));
    if (answer.may_rise_to)
        text += fmt::format(", may rise to {}", asterism::to_text(*answer.may_rise_to));
    if (answer.if_rest_normal)
        text += fmt::format(", {} if the rest is normal", *answer.if_rest_normal);
    return text;
}

std::vector<std::string> differences(Answer const& oracle, Answer const& engine,
                                     Rulebook const& book,
                                     std::vector<std::string> const& findings) {
    std::vector<std::string> lines;
    if (oracle == engine) return lines;
    for (std::size_t i = 0; i < oracle.services.size(); ++i) {
        differ(lines, book.services[i].id.text, to_text(oracle.services[i]),
               to_text(engine.services[i]));
    }
    compare_tallies(lines, oracle, engine, book);
    for (std::size_t i = 0; i < oracle.constellations.size(); ++i) {
        differ(lines, "constellation " + book.constellations[i].id.text,
               asterism::to_text(oracle.constellations[i]),
               asterism::to_text(engine.constellations[i]));
    }
    for (std::size_t i = 0; i < oracle.present.size(); ++i) {
        differ(lines, "finding " + findings[i], asterism::to_text(oracle.present[i]),
               asterism::to_text(engine.present[i]));
    }
    return lines;
}

}  // namespace asterism::oracle
