// SPDX-License-Identifier: MIT
#include <map>

#include <fmt/format.h>

#include "base/number.h"
#include "render/assessment_words.h"
#include "render/comparison.h"

namespace asterism {

namespace {

std::string_view verdict_words(Verdict verdict) {
    switch (verdict) {
        case Verdict::suggested: return "suggested";
        case Verdict::unsettled: return "unsettled";
        case Verdict::not_suggested: return "not suggested";
    }
    return "";
}

std::string_view kind_words(ChangeKind kind) {
    switch (kind) {
        case ChangeKind::gained: return "newly suggested";
        case ChangeKind::lost: return "no longer suggested";
        case ChangeKind::sooner: return "sooner";
        case ChangeKind::later: return "later";
        case ChangeKind::opened: return "no longer settled";
        case ChangeKind::settled: return "settled";
        case ChangeKind::reasons: return "by other rules";
    }
    return "";
}

std::string answer_words(ServiceAnswer const& answer) {
    if (!answer.urgency) return std::string(verdict_words(answer.verdict));
    return fmt::format("{}, by {}", to_text(*answer.urgency), fmt::join(answer.rules, ", "));
}

}  // namespace

std::string book_words(BookIdentity const& book) {
    return fmt::format("{} {}, in force from {} ({})", book.id, book.version, book.effective,
                       book.digest.substr(0, 8));
}

std::string change_words(ServiceChange const& change) {
    bool const open = change.kind == ChangeKind::opened || change.kind == ChangeKind::settled;
    auto const by = open ? fmt::format(", by {}", fmt::join(change.by(), ", ")) : std::string();
    auto const before = answer_words(change.before), after = answer_words(change.after);
    switch (change.kind) {
        case ChangeKind::gained:
            return fmt::format("{} newly suggested ({}; was {})", change.service, after, before);
        case ChangeKind::lost:
            return fmt::format("{} no longer suggested (was {}; is {})", change.service, before,
                               after);
        default:
            return fmt::format("{} {}{} (was {}; is {})", change.service, kind_words(change.kind),
                               by, before, after);
    }
}

std::string count_words(ChangeCount const& count) {
    auto const by =
        count.by.empty() ? std::string() : fmt::format(", by {}", fmt::join(count.by, ", "));
    return fmt::format("{}: {} {}{}", grouped(count.babies), count.service, kind_words(count.kind),
                       by);
}

std::string aspect_words(Difference const& difference) {
    if (!difference.aspect.empty()) return difference.aspect;
    return difference.before.empty() ? "new" : "gone";
}

std::string set_words(CaseSetComparison const& set) {
    auto const changed = set.changed.size();
    auto const verdict = changed == 0   ? std::string("all are judged the same")
                         : changed == 1 ? std::string("1 is judged differently")
                                        : grouped(changed) + " are judged differently";
    auto title = set.title;
    if (set.babies == 1 && title.ends_with('s')) title.pop_back();
    return fmt::format("{} {}: {}", grouped(set.babies), title, verdict);
}

std::string part_words(std::string const& part) {
    static std::map<std::string, std::string> const plural{
        {"class", "classes"}, {"tally", "tallies"}, {"counting key", "counting keys"}};
    auto const found = plural.find(part);
    return found == plural.end() ? part + "s" : found->second;
}

}  // namespace asterism
