// SPDX-License-Identifier: MIT
#include "review/difference.h"

#include <algorithm>
#include <map>
#include <set>

#include "review/difference_items.h"

namespace asterism {

namespace {

using Phrases = std::multimap<std::string, ConditionPtr>;

Phrases phrases(Condition const& condition, Vocabulary const& words) {
    Phrases result;
    for (auto const& child : condition.children()) result.emplace(child->describe(words), child);
    return result;
}

/// Of each phrase as often as it stands in `these` and not in `those`.
std::vector<ConditionPtr> only_in(Phrases const& these, Phrases const& those) {
    std::vector<ConditionPtr> result;
    for (auto at = these.begin(); at != these.end();) {
        auto const end = these.upper_bound(at->first);
        auto extra = static_cast<std::ptrdiff_t>(these.count(at->first)) -
                     static_cast<std::ptrdiff_t>(those.count(at->first));
        for (; at != end; ++at) {
            if (extra-- > 0) result.push_back(at->second);
        }
    }
    return result;
}

/// The text before its children are named: two groups that agree in it differ in children only.
std::string frame(Condition const& condition, Vocabulary const& words) {
    auto text = condition.describe(words);
    auto const children = condition.children();
    auto const first =
        children.empty() ? std::string::npos : text.find(children.front()->describe(words));
    return std::string(condition.kind()) +
           (first == std::string::npos ? text : text.substr(0, first));
}

class ConditionComparison {
public:
    ConditionComparison(Vocabulary const& before, Vocabulary const& after)
        : before_(before), after_(after) {}

    void compare(Condition const& before, Condition const& after) {
        auto const was = before.describe(before_), is = after.describe(after_);
        if (was == is) return;
        if (!same_group(before, after)) return add(was, is);
        auto const old_parts = phrases(before, before_), new_parts = phrases(after, after_);
        auto const gone = only_in(old_parts, new_parts), added = only_in(new_parts, old_parts);
        if (gone.size() == 1 && added.size() == 1) return compare(*gone.front(), *added.front());
        if (gone.empty() && added.empty()) return;  // the same parts in another order
        for (auto const& part : gone) add(part->describe(before_), "");
        for (auto const& part : added) add("", part->describe(after_));
    }

    std::vector<Difference> take() { return std::move(found_); }

private:
    bool same_group(Condition const& before, Condition const& after) const {
        if (before.children().empty() || after.children().empty()) return false;
        auto const kind = before.kind();
        if (kind != after.kind()) return false;
        return kind != "at-least" || frame(before, before_) == frame(after, after_);
    }

    void add(std::string was, std::string is) {
        Difference difference;
        difference.aspect = "condition";
        difference.before = std::move(was);
        difference.after = std::move(is);
        found_.push_back(std::move(difference));
    }

    Vocabulary const& before_;
    Vocabulary const& after_;
    std::vector<Difference> found_;
};

/// Values by key; a key that stands twice (a service suggested twice) keeps both.
std::map<std::string, std::string> by_aspect(BookItem const& item) {
    std::map<std::string, std::string> result;
    for (auto const& [aspect, value] : item.aspects) {
        auto& text = result[aspect];
        text += (text.empty() ? "" : ", ") + value;
    }
    return result;
}

std::vector<std::string> names_of(BookItem const& before, BookItem const& after) {
    std::vector<std::string> names;
    std::set<std::string> seen;
    for (auto const* item : {&after, &before}) {
        for (auto const& [aspect, value] : item->aspects) {
            if (seen.insert(aspect).second) names.push_back(aspect);
        }
    }
    return names;
}

class BookDifference {
public:
    BookDifference(CompiledRulebook const& before, CompiledRulebook const& after)
        : words_before_(before.vocabulary()), words_after_(after.vocabulary()) {}

    void compare(BookPart const& before, BookPart const& after) {
        part_ = before.name;
        std::map<std::string, BookItem const*> old_items;
        std::set<std::string> kept;
        for (auto const& item : before.items) old_items.emplace(item.id, &item);
        for (auto const& item : after.items) kept.insert(item.id);
        for (auto const& item : before.items) {
            if (kept.count(item.id) == 0) add(item, "", item.whole, "");
        }
        for (auto const& item : after.items) {
            auto const old = old_items.find(item.id);
            if (old == old_items.end())
                add(item, "", "", item.whole);
            else
                compare(*old->second, item);
        }
    }

    std::vector<Difference> take() { return std::move(found_); }

private:
    void add(BookItem const& item, std::string aspect, std::string was, std::string is) {
        found_.push_back({part_, item.id, item.label, std::move(aspect), std::move(was),
                          std::move(is), item.span.place()});
    }

    void compare(BookItem const& before, BookItem const& after) {
        for (auto const& [aspect, condition] : before.conditions) {
            compare_condition(aspect, condition, find(after, aspect), after);
        }
        for (auto const& [aspect, condition] : after.conditions) {
            if (!find(before, aspect)) compare_condition(aspect, nullptr, condition, after);
        }
        auto old_values = by_aspect(before), new_values = by_aspect(after);
        for (auto const& aspect : names_of(before, after)) {
            if (old_values[aspect] != new_values[aspect])
                add(after, aspect, old_values[aspect], new_values[aspect]);
        }
    }

    static ConditionPtr find(BookItem const& item, std::string const& aspect) {
        for (auto const& [name, condition] : item.conditions) {
            if (name == aspect) return condition;
        }
        return nullptr;
    }

    void compare_condition(std::string const& aspect, ConditionPtr const& before,
                           ConditionPtr const& after, BookItem const& item) {
        if (!before) return add(item, aspect, "", after->describe(words_after_));
        if (!after) return add(item, aspect, before->describe(words_before_), "");
        for (auto& part : condition_differences(*before, words_before_, *after, words_after_)) {
            add(item, aspect, std::move(part.before), std::move(part.after));
        }
    }

    Vocabulary words_before_, words_after_;
    std::string part_;
    std::vector<Difference> found_;
};

}  // namespace

std::vector<Difference> condition_differences(Condition const& before,
                                              Vocabulary const& words_before,
                                              Condition const& after,
                                              Vocabulary const& words_after) {
    ConditionComparison comparison(words_before, words_after);
    comparison.compare(before, after);
    return comparison.take();
}

std::vector<Difference> differences(CompiledRulebook const& before, CompiledRulebook const& after) {
    BookDifference comparison(before, after);
    auto const old_parts = parts_of(before), new_parts = parts_of(after);
    for (std::size_t i = 0; i < old_parts.size(); ++i)
        comparison.compare(old_parts[i], new_parts[i]);
    return comparison.take();
}

}  // namespace asterism
