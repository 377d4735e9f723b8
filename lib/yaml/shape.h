// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace asterism::yaml {

struct FieldShape;

/// What a value may look like: the part of a field table that a schema or a handbook can print.
struct Shape {
    enum class Kind {
        text,
        integer,
        number,
        boolean,
        list,
        record,
        map,
        choice,
        either,
        nothing,
        any
    };

    Kind kind = Kind::text;
    std::string refers_to;  ///< text that names something: finding, service, step, source, ...
    std::vector<std::string> choices;  ///< choice: the words accepted
    std::vector<FieldShape> fields;    ///< record: its fields in order
    std::vector<Shape> alternatives;   ///< either: the forms accepted
    /// list: the form of each item; map: of each value; record: of the values of further keys
    std::shared_ptr<Shape const> item;
    std::optional<int> least{};  ///< integer: smallest; list, record: fewest items or keys
    std::optional<int> most{};   ///< integer: largest; list: most items
};

struct FieldShape {
    std::string name;
    bool required = false;
    std::string doc;
    Shape shape;
};

// Shapes of values that have no field table.
Shape list_shape(Shape item, std::optional<int> least = {}, std::optional<int> most = {});
/// Any key, values of one form; `keys` says what a key names.
Shape map_shape(Shape value, std::string keys = {});
Shape either_shape(std::vector<Shape> alternatives);
Shape word_shape(std::string refers_to = {});
Shape nothing_shape();

}  // namespace asterism::yaml
