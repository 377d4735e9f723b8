// SPDX-License-Identifier: MIT
// Single edits of one condition, made in the syntax tree.
#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "base/number.h"
#include "base/time.h"
#include "review/mutant.h"

namespace asterism {

namespace {

constexpr std::array groups{"all", "any", "none", "of"};
constexpr std::array bounds{"above", "at-least", "below", "at-most"};

using Rebuild = std::function<yaml::Node(yaml::Node)>;

yaml::Node negation(yaml::Node const& node) {
    return yaml::map(node.span, {{{"none", node.span}, yaml::list(node.span, {node})}});
}

yaml::Node with_entry(yaml::Node node, std::size_t entry, yaml::Node value) {
    node.entries[entry].value = std::move(value);
    return node;
}

yaml::Node with_item(yaml::Node list, std::size_t item, yaml::Node value) {
    list.items[item] = std::move(value);
    return list;
}

class Editor {
public:
    explicit Editor(std::vector<EditedCondition>& out) : out_(out) {}

    void condition(yaml::Node const& node, Rebuild const& rebuild) {
        out_.push_back(
            {MutantKind::negated, node.span, "condition negated", rebuild(negation(node))});
        for (std::size_t i = 0; i < node.entries.size(); ++i) {
            auto const& [key, value] = node.entries[i];
            auto const inner = [&, i](yaml::Node changed) {
                return rebuild(with_entry(node, i, std::move(changed)));
            };
            if (std::find(groups.begin(), groups.end(), key.text) != groups.end())
                members(value, inner);
            else
                numbers(key.text, value, inner);
        }
    }

private:
    void members(yaml::Node const& list, Rebuild const& rebuild) {
        for (std::size_t i = 0; i < list.items.size(); ++i) {
            condition(list.items[i], [&, i](yaml::Node changed) {
                return rebuild(with_item(list, i, std::move(changed)));
            });
            if (list.items.size() < 2) continue;
            auto fewer = list;
            fewer.items.erase(fewer.items.begin() + static_cast<std::ptrdiff_t>(i));
            out_.push_back({MutantKind::dropped, list.items[i].span, "condition left out",
                            rebuild(std::move(fewer))});
        }
    }

    void numbers(std::string const& key, yaml::Node const& value, Rebuild const& rebuild) {
        if (value.is_scalar() && std::find(bounds.begin(), bounds.end(), key) != bounds.end())
            return number(value, rebuild);
        if (value.is_list() && key == "between") {
            for (std::size_t i = 0; i < value.items.size(); ++i)
                number(value.items[i], [&, i](yaml::Node changed) {
                    return rebuild(with_item(value, i, std::move(changed)));
                });
        }
        if (!value.is_map()) return;
        for (std::size_t i = 0; i < value.entries.size(); ++i)
            numbers(value.entries[i].key.text, value.entries[i].value, [&, i](yaml::Node changed) {
                return rebuild(with_entry(value, i, std::move(changed)));
            });
    }

    void number(yaml::Node const& value, Rebuild const& rebuild) {
        for (int const by : {-1, 1}) {
            auto const text = moved(value.text, by);
            if (!text) continue;
            auto changed = value;
            changed.text = *text;
            out_.push_back({MutantKind::threshold, value.span,
                            fmt::format("{} instead of {}", *text, value.text),
                            rebuild(std::move(changed))});
        }
    }

    std::vector<EditedCondition>& out_;
};

/// The last whole number of a text such as `24h` moved by one.
std::optional<std::string> last_number_moved(std::string const& text, int by) {
    auto const digit = [](char c) { return c >= '0' && c <= '9'; };
    auto const last = std::find_if(text.rbegin(), text.rend(), digit).base();
    auto first = last;
    while (first != text.begin() && digit(*(first - 1))) --first;
    auto const number = parse_integer(std::string(first, last));
    if (!number || *number + by < 0) return std::nullopt;
    return std::string(text.begin(), first) + std::to_string(*number + by) +
           std::string(last, text.end());
}

}  // namespace

std::optional<std::string> moved(std::string const& text, int by) {
    if (auto const number = parse_decimal(text)) {
        auto const value = number->value + by * std::pow(10.0, -number->decimals);
        auto const printed = fmt::format("{:.{}f}", value, number->decimals);
        return printed.starts_with("-0") && value > -1e-9 ? printed.substr(1) : printed;
    }
    if (auto const days = parse_gestation(text); days && days->exact())
        return to_text(Gestation{days->min_days + by, days->min_days + by});
    return parse_duration(text) ? last_number_moved(text, by) : std::nullopt;
}

std::vector<EditedCondition> edited(yaml::Node const& condition) {
    std::vector<EditedCondition> out;
    Editor(out).condition(condition, [](yaml::Node changed) { return changed; });
    return out;
}

void collect_words(yaml::Node const& node, std::vector<std::string>& words) {
    if (node.is_scalar()) words.push_back(node.text);
    for (auto const& item : node.items) collect_words(item, words);
    for (auto const& [key, value] : node.entries) {
        words.push_back(key.text);
        collect_words(value, words);
    }
}

}  // namespace asterism
