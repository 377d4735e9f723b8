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

void compare_tallies(std::vector<std::string>& lines, Answer const& oracle, Answer const& engine) {
    for (auto const& [name, bounds] : oracle.tallies) {
        auto const other = engine.tallies.find(name);
        differ(lines, "tally " + name, to_text(bounds),
               other == engine.tallies.end() ? "nothing" : to_text(other->second));
    }
    if (engine.tallies.size() != oracle.tallies.size())
        lines.push_back("the engine has other tallies");
}

}  // namespace

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
    compare_tallies(lines, oracle, engine);
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
