// SPDX-License-Identifier: MIT
#include "yaml/reader.h"

#include <fmt/format.h>

#include "base/nearest.h"

namespace asterism::yaml {

namespace {

std::string found(Node const& node) {
    return node.is_scalar() ? fmt::format("`{}`", node.text) : std::string(to_text(node.kind));
}

bool is_plain(Node const& node) { return node.is_scalar() && !node.quoted; }

}  // namespace

void wrong_form(Node const& node, std::string_view expected, Diagnostics& diagnostics) {
    diagnostics.error("wrong-form", node.span,
                      fmt::format("expected {}, found {}", expected, found(node)));
}

void unknown_word(Word const& word, std::string_view what, std::vector<std::string> const& known,
                  Diagnostics& diagnostics) {
    auto help = did_you_mean(word.text, known);
    if (help.empty()) help = fmt::format("accepted: {}", fmt::join(known, ", "));
    diagnostics.error(fmt::format("unknown-{}", what), word.span,
                      fmt::format("unknown {} `{}`", what, word.text), help);
}

Reader<Word> word(std::string refers_to) {
    return {{Shape::Kind::text, std::move(refers_to), {}, {}, {}, nullptr},
            [](Node const& node, Word& target, Diagnostics& diagnostics) {
                if (!node.is_scalar() || node.text.empty())
                    return wrong_form(node, "a text", diagnostics);
                target = node.word();
            }};
}

Reader<std::string> text() {
    return {{}, [](Node const& node, std::string& target, Diagnostics& diagnostics) {
                if (!node.is_scalar() || node.text.empty())
                    return wrong_form(node, "a text", diagnostics);
                target = std::string(trim(node.text));
            }};
}

Reader<bool> boolean() {
    return {{Shape::Kind::boolean, {}, {}, {}, {}, nullptr},
            [](Node const& node, bool& target, Diagnostics& diagnostics) {
                bool const fine = is_plain(node) && (node.text == "true" || node.text == "false");
                if (!fine) return wrong_form(node, "`true` or `false`", diagnostics);
                target = node.text == "true";
            }};
}

Reader<int> integer(int least, int most) {
    return {{Shape::Kind::integer, {}, {}, {}, {}, nullptr, least, most},
            [=](Node const& node, int& target, Diagnostics& diagnostics) {
                auto const value = is_plain(node) ? parse_integer(node.text) : std::nullopt;
                if (!value || *value < least || *value > most) {
                    return wrong_form(node,
                                      fmt::format("a whole number from {} to {}", least, most),
                                      diagnostics);
                }
                target = *value;
            }};
}

Reader<double> number() {
    return {{Shape::Kind::number, {}, {}, {}, {}, nullptr},
            [](Node const& node, double& target, Diagnostics& diagnostics) {
                auto const value = is_plain(node) ? parse_decimal(node.text) : std::nullopt;
                if (!value) return wrong_form(node, "a decimal number", diagnostics);
                target = value->value;
            }};
}

Reader<Node> raw(std::string refers_to) {
    return {{Shape::Kind::any, std::move(refers_to), {}, {}, {}, nullptr},
            [](Node const& node, Node& target, Diagnostics&) { target = node; }};
}

Reader<Node> raw(Shape shape) {
    auto reader = raw();
    reader.shape = std::move(shape);
    return reader;
}

Reader<Node> list_of_conditions() { return raw(list_shape(raw("condition").shape, 1)); }

}  // namespace asterism::yaml
