// SPDX-License-Identifier: MIT
/// Tallies and constellations.
#include <algorithm>
#include <cmath>

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

std::string question_of(std::vector<Member> const& members) {
    if (members.size() == 1 && members[0].displaced_by.empty())
        return "present " + members[0].finding->name();
    std::string text = "count of";
    for (auto const& member : members) {
        text += " " + member.finding->name();
        for (auto const* below : member.displaced_by) text += " unless " + below->name();
    }
    return text;
}

bool Judge::familial(std::string const& finding) const {
    for (auto const* statement : said(finding).present) {
        if (statement->familial) return true;
    }
    return false;
}

Truth Judge::counts(Member const& member) {
    auto value = present(*member.finding, the_book);
    if (member.minor && familial(member.finding->name())) return Truth::no;
    for (auto const* below : member.displaced_by)
        value = both(value, opposite(present(*below, the_book)));
    for (auto const* below : member.displaced_by_if_familial) {
        if (familial(below->name())) value = both(value, opposite(present(*below, the_book)));
    }
    return value;
}

Truth Judge::any_counts(std::vector<Member> const& members) {
    auto value = Truth::no;
    for (auto const& member : members) value = either(value, counts(member));
    return value;
}

/// Whether a key counts by what is no minor variant; this can be supposed.
Truth Judge::major_counts(std::vector<Member> const& members) {
    if (!supposed_.empty()) {
        auto const known = supposed_.find(question_of(members));
        if (known != supposed_.end()) return known->second;
    }
    return any_counts(members);
}

Truth Judge::covered(std::string const& field) {
    auto value = Truth::no;
    for (auto const* members : tables_.covering(field))
        value = either(value, major_counts(*members));
    return value;
}

Bounds Judge::count_keys(ClassSet classes) {
    Bounds bounds;
    auto const& minors = tables_.members(classes, true);
    auto const& majors = tables_.members(classes, false);
    for (auto const& [key, syntax] : tables_.keys) {
        auto value = Truth::no;
        if (auto const found = minors.find(key); found != minors.end())
            value = both(any_counts(found->second), opposite(covered(key)));
        if (auto const found = majors.find(key); found != majors.end())
            value = either(value, major_counts(found->second));
        add(bounds, value, 10);
    }
    return bounds;
}

Bounds Judge::add_points(std::vector<ScoreItem const*> const& items) {
    Bounds bounds;
    for (auto const* item : items)
        add(bounds, holds(item->when, the_book), std::llround(item->points * 10));
    return bounds;
}

Bounds Judge::tally(std::string const& id) {
    if (auto const known = tally_.find(id); known != tally_.end()) return known->second;
    auto const& text = tables_.tallies.at(id);
    auto const bounds = text.classes.empty() ? add_points(text.items) : count_keys(text.classes);
    tally_.emplace(id, bounds);
    return bounds;
}

Truth Judge::reached(std::string const& constellation) {
    if (auto const known = reached_.find(constellation); known != reached_.end())
        return known->second;
    auto const value = holds(tables_.constellations.at(constellation)->reached, the_book);
    reached_.emplace(constellation, value);
    return value;
}

std::vector<std::string> Judge::open_questions() {
    std::vector<std::string> open;
    auto const ask = [&](std::string const& question) {
        if (std::find(open.begin(), open.end(), question) == open.end()) open.push_back(question);
    };
    auto const displaced = [&](MembersByKey const& keys) {
        for (auto const& [key, members] : keys) {
            for (auto const& member : members) {
                if (present(*member.finding, the_book) != Truth::yes) continue;
                for (auto const* below : member.displaced_by) {
                    if (present(*below, the_book) == Truth::unknown)
                        ask("present " + below->name());
                }
            }
        }
    };
    auto const& majors = tables_.members(Tables::major_classes(), false);
    for (auto const& [name, tally] : tables_.tallies) {
        if (tally.classes.empty()) continue;
        displaced(majors);
        displaced(tables_.members(tally.classes, false));
        displaced(tables_.members(tally.classes, true));
        for (auto const& [field, members] : tables_.members(tally.classes, true)) {
            if (any_counts(members) != Truth::yes) continue;
            for (auto const* covering : tables_.covering(field)) {
                if (major_counts(*covering) == Truth::unknown) ask(question_of(*covering));
            }
        }
    }
    return open;
}

}  // namespace asterism::oracle
