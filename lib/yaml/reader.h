// SPDX-License-Identifier: MIT
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/diagnostic.h"
#include "base/number.h"
#include "yaml/node.h"
#include "yaml/shape.h"

namespace asterism::yaml {

/// Reads one value and can describe itself. A reader that reports a problem leaves the target as it
/// was.
template <class T>
struct Reader {
    Shape shape;
    std::function<void(Node const&, T&, Diagnostics&)> read;
};

/// Reports that a value has another form than the one expected; `expected` completes "expected
/// ...".
void wrong_form(Node const& node, std::string_view expected, Diagnostics& diagnostics);
/// Reports a word that is none of the accepted ones, with the nearest.
void unknown_word(Word const& word, std::string_view what, std::vector<std::string> const& known,
                  Diagnostics& diagnostics);

/// A scalar with its place. `refers_to` names what the word stands for (finding, service, ...).
Reader<Word> word(std::string refers_to = {});
/// A scalar's text.
Reader<std::string> text();
/// `true` or `false`, unquoted.
Reader<bool> boolean();
/// A whole number within bounds.
Reader<int> integer(int least, int most);
/// A finite decimal number.
Reader<double> number();
/// The value as it stands, for parts that another room reads; `refers_to` says what it holds.
Reader<Node> raw(std::string refers_to = {});
/// As above, where the form is known.
Reader<Node> raw(Shape shape);
/// As above, for a list of conditions.
Reader<Node> list_of_conditions();

/// A list of values; every item is read even after one was refused.
template <class T>
Reader<std::vector<T>> list_of(Reader<T> item) {
    Shape shape{Shape::Kind::list, {}, {}, {}, {}, std::make_shared<Shape const>(item.shape)};
    return {std::move(shape),
            [item](Node const& node, std::vector<T>& target, Diagnostics& diagnostics) {
                if (!node.is_list()) return wrong_form(node, "a list", diagnostics);
                for (auto const& element : node.items) {
                    T value{};
                    item.read(element, value, diagnostics);
                    target.push_back(std::move(value));
                }
            }};
}

/// One value or a list of them.
template <class T>
Reader<std::vector<T>> one_or_more(Reader<T> item) {
    auto const many = list_of(item);
    Shape shape{Shape::Kind::either, {}, {}, {}, {item.shape, many.shape}, nullptr};
    return {std::move(shape),
            [item, many](Node const& node, std::vector<T>& target, Diagnostics& diagnostics) {
                if (node.is_list()) return many.read(node, target, diagnostics);
                T value{};
                item.read(node, value, diagnostics);
                target.push_back(std::move(value));
            }};
}

/// One of a closed set of words.
template <class E>
Reader<E> choice(std::vector<std::pair<std::string, E>> words) {
    std::vector<std::string> names;
    for (auto const& [name, value] : words) names.push_back(name);
    Shape shape{Shape::Kind::choice, {}, names, {}, {}, nullptr};
    return {std::move(shape),
            [words, names](Node const& node, E& target, Diagnostics& diagnostics) {
                if (!node.is_scalar()) return wrong_form(node, "one word", diagnostics);
                for (auto const& [name, value] : words) {
                    if (name == node.text) {
                        target = value;
                        return;
                    }
                }
                unknown_word(node.word(), "value", names, diagnostics);
            }};
}

/// Reads into an optional: engaged only when the key is there and well-formed.
template <class T>
Reader<std::optional<T>> maybe(Reader<T> inner) {
    return {inner.shape,
            [inner](Node const& node, std::optional<T>& target, Diagnostics& diagnostics) {
                Diagnostics problems;
                T value{};
                inner.read(node, value, problems);
                if (!problems.has_errors()) target = std::move(value);
                diagnostics.append(problems);
            }};
}

}  // namespace asterism::yaml
