// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "yaml/reader.h"

namespace asterism::yaml {

/// The fields of one kind of map: reads it, refuses unknown keys with the nearest known one,
/// reports missing keys, and describes itself. One table serves parsing, messages, schemas and
/// help.
template <class T>
class Table {
public:
    /// `what` names the thing in messages: "finding", "rule".
    explicit Table(std::string what) : what_(std::move(what)) {}

    template <class M>
    Table& required(std::string name, M T::*member, Reader<M> reader, std::string doc) {
        return add(std::move(name), true, member, std::move(reader), std::move(doc));
    }
    template <class M>
    Table& optional(std::string name, M T::*member, Reader<M> reader, std::string doc) {
        return add(std::move(name), false, member, std::move(reader), std::move(doc));
    }

    /// Reads every known field, however many problems there are.
    void read(Node const& node, T& target, Diagnostics& diagnostics) const {
        if (!node.is_map())
            return wrong_form(node, fmt::format("a map of the {}'s fields", what_), diagnostics);
        for (auto const& entry : node.entries) read_entry(entry, target, diagnostics);
        for (auto const& field : fields_) {
            if (field.shape.required && !node.find(field.shape.name))
                report_missing(node, field.shape.name, diagnostics);
        }
    }

    Reader<T> reader() const {
        return {shape(), [table = *this](Node const& node, T& target, Diagnostics& diagnostics) {
                    table.read(node, target, diagnostics);
                }};
    }

    Shape shape() const {
        Shape result{Shape::Kind::record, what_, {}, {}, {}, nullptr};
        for (auto const& field : fields_) result.fields.push_back(field.shape);
        return result;
    }

private:
    struct Field {
        FieldShape shape;
        std::function<void(Node const&, T&, Diagnostics&)> read;
    };

    template <class M>
    Table& add(std::string name, bool is_required, M T::*member, Reader<M> reader,
               std::string doc) {
        FieldShape shape{std::move(name), is_required, std::move(doc), reader.shape};
        fields_.push_back(
            {std::move(shape), [member, read = std::move(reader.read)](Node const& node, T& target,
                                                                       Diagnostics& diagnostics) {
                 read(node, target.*member, diagnostics);
             }});
        return *this;
    }

    void read_entry(Entry const& entry, T& target, Diagnostics& diagnostics) const {
        for (auto const& field : fields_) {
            if (field.shape.name == entry.key.text)
                return field.read(entry.value, target, diagnostics);
        }
        std::vector<std::string> names;
        for (auto const& field : fields_) names.push_back(field.shape.name);
        unknown_word(entry.key, "key", names, diagnostics);
    }

    void report_missing(Node const& node, std::string const& name, Diagnostics& diagnostics) const {
        diagnostics.error("missing-key", node.span,
                          fmt::format("the {} lacks the key `{}`", what_, name));
    }

    std::string what_;
    std::vector<Field> fields_;
};

}  // namespace asterism::yaml
