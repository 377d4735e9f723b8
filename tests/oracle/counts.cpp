// SPDX-License-Identifier: MIT
/// Tallies and constellations.
#include <algorithm>

#include "oracle/judge.h"
#include "oracle/kleene.h"

namespace asterism::oracle {

namespace {

Asker const the_book;

void add(Bounds& bounds, Truth value, std::int64_t tenths) {
    if (value == Truth::yes) bounds.low += tenths;
    if (value != Truth::no) bounds.high += tenths;
}

}  // namespace

Truth Judge::counts(Member const& member) {
    if (member.minor && said(*member.finding).familial) return Truth::no;
    auto value = present(*member.finding, the_book);
    if (value == Truth::no) return value;
    for (auto const* below : member.displaced_by)
        value = both(value, opposite(present(*below, the_book)));
    for (auto const* below : member.displaced_by_if_familial) {
        if (said(*below).familial) value = both(value, opposite(present(*below, the_book)));
    }
    return value;
}

Truth Judge::any_counts(Members const& members) {
    auto& known = counted_[members.number];
    if (known) return *known;
    auto value = Truth::no;
    for (auto const& member : members.list) value = either(value, counts(member));
    known = value;
    return value;
}

/// Whether a key counts by what is no minor variant; this can be supposed.
Truth Judge::major_counts(Members const& members) {
    if (!supposed_.empty() && supposed_[members.question]) return *supposed_[members.question];
    return any_counts(members);
}

Truth Judge::covered(CountedKeyText const& key) {
    auto value = Truth::no;
    for (auto const* members : key.covering) value = either(value, major_counts(*members));
    return value;
}

Truth Judge::key_counts(CountedKeyText const& key) {
    auto value = Truth::no;
    if (key.minors) value = both(any_counts(*key.minors), opposite(covered(key)));
    if (key.others) value = either(value, major_counts(*key.others));
    return value;
}

Bounds Judge::add_up(TallyText const& text) {
    Bounds bounds;
    for (auto const& key : text.keys) add(bounds, key_counts(key), 10);
    for (auto const& item : text.items) add(bounds, holds(item.when, the_book), item.tenths);
    return bounds;
}

Bounds Judge::tally(std::size_t number) {
    auto& known = tally_[number];
    if (!known) known = add_up(tables_.tallies[number]);
    return *known;
}

Truth Judge::reached(std::size_t constellation) {
    auto& known = reached_[constellation];
    if (!known) known = holds(tables_.constellations[constellation], the_book);
    return *known;
}

std::vector<std::size_t> Judge::open_questions() {
    std::vector<std::size_t> open;
    auto const ask = [&](std::size_t question) {
        if (std::find(open.begin(), open.end(), question) == open.end()) open.push_back(question);
    };
    for (auto const& [finding, below] : tables_.displaced) {
        if (present(*finding, the_book) == Truth::yes &&
            present(*below, the_book) == Truth::unknown)
            ask(below->number);
    }
    for (auto const& tally : tables_.tallies) {
        for (auto const& key : tally.keys) {
            if (!key.minors || any_counts(*key.minors) != Truth::yes) continue;
            for (auto const* covering : key.covering) {
                if (major_counts(*covering) == Truth::unknown) ask(covering->question);
            }
        }
    }
    return open;
}

}  // namespace asterism::oracle
