// SPDX-License-Identifier: MIT
#include "batch/meanings.h"

#include "cases/examined.h"
#include "cases/measured.h"

namespace asterism::batch {

namespace {

template <class T>
std::optional<T> if_parsed(Parsed<T> const& parsed) {
    return parsed ? std::optional(*parsed) : std::nullopt;
}

Word word(std::string_view text) { return {std::string(text), {}}; }

}  // namespace

template <class T, class Ask>
T const* Meanings::remembered(TextTable<T>& table, T& last, std::string_view text, Ask ask) {
    if (auto const* known = table.find(text)) return known;
    // Escapes are for the full reader; what is remembered has none.
    if (text.find('\\') != std::string_view::npos) return nullptr;
    std::optional<T> const answer = ask(text);
    if (!answer) return nullptr;
    table.add(text, *answer);
    last = *answer;
    return &last;
}

FindingId const* Meanings::finding(std::string_view name) {
    return remembered(
        findings_, finding_, name, [&](std::string_view text) -> std::optional<FindingId> {
            auto const targets = ontology_.finding_names.exact(text);
            return targets.size() == 1 ? std::optional(targets.front()) : std::nullopt;
        });
}

Gestation const* Meanings::gestation(std::string_view text) {
    return remembered(gestations_, gestation_, text,
                      [](std::string_view t) { return if_parsed(parse_gestation(t)); });
}

Duration const* Meanings::duration(std::string_view text) {
    return remembered(durations_, duration_, text,
                      [](std::string_view t) { return if_parsed(parse_duration(t)); });
}

Date const* Meanings::date(std::string_view text) {
    return remembered(dates_, date_, text,
                      [](std::string_view t) { return if_parsed(parse_date(t)); });
}

std::optional<StepSet> Meanings::ask_steps(std::string_view name, bool except) const {
    if (name.empty()) return std::nullopt;
    std::vector<bool> done(ontology_.steps.size(), except);
    auto node = yaml::scalar(word(name));
    if (except) {
        auto items = yaml::list({}, {std::move(node)});
        auto map = yaml::map({}, {{word("except"), std::move(items)}});
        node = yaml::list({}, {std::move(map)});
    }
    Diagnostics diagnostics;
    read_examined(node, ontology_, done, diagnostics);
    if (!diagnostics.empty()) return std::nullopt;
    if (except) done.flip();
    return StepSet(done);
}

StepSet const* Meanings::steps(std::string_view name) {
    return remembered(steps_, step_set_, name,
                      [&](std::string_view text) { return ask_steps(text, false); });
}

StepSet const* Meanings::exceptions(std::string_view name) {
    return remembered(exceptions_, step_set_, name,
                      [&](std::string_view text) { return ask_steps(text, true); });
}

MeasuredValue const* Meanings::measure(std::string_view name, std::string_view value) {
    if (name.empty() || value.empty()) return nullptr;
    measure_key_.assign(name).append(1, '\0').append(value);
    return remembered(
        measures_, measured_, measure_key_, [&](std::string_view) -> std::optional<MeasuredValue> {
            Diagnostics diagnostics;
            auto result = read_measure(word(name), word(value), ontology_, diagnostics);
            return diagnostics.empty() ? result : std::nullopt;
        });
}

}  // namespace asterism::batch
