// SPDX-License-Identifier: MIT
#include "review/promise_words.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace asterism {

namespace {

std::string joined(std::vector<Word> const& list) {
    std::vector<std::string> texts;
    for (auto const& word : list) texts.push_back(word.text);
    return fmt::format("{}", fmt::join(texts, ", "));
}

std::string outcome(PromiseOutcome const& o) {
    std::vector<std::string> parts;
    if (!o.suggest.empty()) parts.push_back("suggested: " + joined(o.suggest));
    if (!o.never.empty()) parts.push_back("never suggested: " + joined(o.never));
    if (o.at_least) parts.push_back(fmt::format("at least {}", to_text(*o.at_least)));
    if (o.holds.kind != yaml::Kind::null) parts.push_back("holds: " + yaml::to_text(o.holds));
    if (o.never_met.kind != yaml::Kind::null)
        parts.push_back("never met: " + yaml::to_text(o.never_met));
    if (o.keeps_urgency) parts.emplace_back("keeps the urgency");
    if (o.keeps_services) parts.emplace_back("keeps the urgency of every service");
    return fmt::format("{}", fmt::join(parts, ", "));
}

}  // namespace

std::string promised_babies(PromiseSyntax const& p) {
    std::string result = p.when.kind == yaml::Kind::null ? "every baby" : yaml::to_text(p.when);
    if (p.for_each) result += fmt::format("; each {}", to_text(*p.for_each));
    if (p.adding) result += fmt::format("; adding a {}", to_text(*p.adding));
    if (!p.except.empty()) result += "; except " + joined(p.except);
    if (p.familial) result += "; familial";
    if (p.alone) result += "; nothing else present";
    return result;
}

std::string promised_outcome(PromiseSyntax const& promise) {
    std::vector<std::string> parts;
    for (auto const& o : promise.then) parts.push_back(outcome(o));
    return fmt::format("{}", fmt::join(parts, "; "));
}

}  // namespace asterism
