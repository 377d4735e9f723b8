// SPDX-License-Identifier: MIT
#include "oracle/engine.h"

#include <algorithm>

#include <fmt/format.h>

#include "assess/measure_norms.h"
#include "assess/measure_values.h"
#include "assess/verdicts.h"

namespace asterism::oracle {

namespace {

void note(std::vector<NormBand>& by_norm, std::string const& norm,
          std::optional<NumberBand> const& band) {
    if (band) by_norm.push_back({norm, {band->low, band->high}});
}

Numbers numbers_from(std::vector<MeasureReading> const& readings) {
    Numbers numbers;
    for (auto const& reading : readings) {
        Given given{
            reading.measured.measure, Interval{reading.value.low, reading.value.high}, {}, {}};
        note(given.z, "", reading.z);
        note(given.centile, "", reading.centile);
        for (auto const& answer : reading.answers) {
            if (!answer) continue;
            note(given.z, answer->norm, answer->z_with_margin);
            note(given.centile, answer->norm, centile_with_margin(*answer));
        }
        numbers.push_back(std::move(given));
    }
    return numbers;
}

ServiceAnswer service(ServiceVerdict const& now, ServiceVerdict const& rest) {
    ServiceAnswer answer{std::string(to_text(now.verdict)), now.urgency, {}, {}};
    if (now.urgency && now.open_urgency && *now.open_urgency > *now.urgency)
        answer.may_rise_to = now.open_urgency;
    if (now.verdict == Verdict::unsettled) answer.if_rest_normal = to_text(rest.verdict);
    return answer;
}

std::string tenths_as_printed(std::int64_t tenths) {
    auto text = fmt::format("{}.{}", tenths / 10, tenths % 10);
    return tenths % 10 == 0 ? text.substr(0, text.size() - 2) : text;
}

ServiceAnswer as_printed(Referral const& referral) {
    ServiceAnswer answer{
        std::string(to_text(referral.verdict)), referral.urgency, referral.may_rise_to, {}};
    if (referral.if_rest_normal) answer.if_rest_normal = to_text(*referral.if_rest_normal);
    return answer;
}

void differ(std::vector<std::string>& lines, std::string const& what, std::string const& wanted,
            std::string const& printed) {
    if (wanted != printed)
        lines.push_back(fmt::format("{}: evaluated {}, printed {}", what, wanted, printed));
}

/// `closed` are the values with the open questions of the counting answered with no.
Answer read_off(CompiledRulebook const& book, std::span<Truth const> now,
                std::span<Truth const> closed, std::span<Truth const> if_rest_normal) {
    Answer answer;
    auto const found = verdicts(book, now);
    auto const rest = verdicts(book, if_rest_normal);
    for (std::size_t i = 0; i < found.size(); ++i)
        answer.services.push_back(service(found[i], rest[i]));
    for (auto const& tally : book.tallies) {
        auto const bounds = sum(tally.inputs, now);
        answer.tallies.push_back({bounds.low, bounds.high, sum(tally.inputs, closed).low});
    }
    for (auto const& constellation : book.constellations)
        answer.constellations.push_back(value_of(constellation.reached.literal, now));
    for (auto const literal : book.present) answer.present.push_back(value_of(literal, now));
    return answer;
}

}  // namespace

Answer read_off(CompiledRulebook const& book, std::span<Truth const> now,
                std::span<Truth const> if_rest_normal) {
    return read_off(book, now, with_splits_closed(book, now), if_rest_normal);
}

EngineAnswer ask_engine(CompiledRulebook const& book, Case const& baby) {
    auto now = evaluate(book, baby, Rest::unknown);
    auto const rest = with_rest(book, baby, now, Rest::normal);
    auto answer = read_off(book, now.values, now.counted, rest.values);
    return {std::move(answer), numbers_from(now.readings), std::move(now.values)};
}

Numbers numbers_of(CompiledRulebook const& book, Case const& baby) {
    if (baby.measures.empty()) return {};
    return numbers_from(read_margins(*book.ontology, *book.standards, baby));
}

std::vector<std::string> differences_in_print(Answer const& answer, Assessment const& printed,
                                              Rulebook const& book) {
    std::vector<std::string> lines;
    for (std::size_t i = 0; i < answer.services.size(); ++i) {
        differ(lines, book.services[i].id.text, to_text(answer.services[i]),
               to_text(as_printed(printed.referrals[i])));
    }
    auto const names = tally_names(book);
    for (auto const& tally : printed.tallies) {
        auto const place = std::find(names.begin(), names.end(), tally.tally) - names.begin();
        auto const& bounds = answer.tallies.at(static_cast<std::size_t>(place));
        differ(lines, tally.tally,
               tenths_as_printed(bounds.counted) + " to " + tenths_as_printed(bounds.high),
               tally.low + " to " + tally.high);
    }
    for (std::size_t i = 0; i < answer.constellations.size(); ++i) {
        for (auto const& result : printed.constellations) {
            if (result.constellation != book.constellations[i].id.text) continue;
            differ(lines, result.constellation,
                   std::string(asterism::to_text(answer.constellations[i])),
                   std::string(asterism::to_text(result.reached)));
        }
    }
    return lines;
}

}  // namespace asterism::oracle
