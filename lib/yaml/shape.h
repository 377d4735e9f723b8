// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <string>
#include <vector>

namespace asterism::yaml {

struct FieldShape;

/// What a value may look like: the part of a field table that a schema or a handbook can print.
struct Shape {
    enum class Kind { text, integer, number, boolean, list, record, choice, either, any };

    Kind kind = Kind::text;
    std::string refers_to;  ///< text that names something: finding, service, step, source, ...
    std::vector<std::string> choices;   ///< choice: the words accepted
    std::vector<FieldShape> fields;     ///< record: its fields in order
    std::vector<Shape> alternatives;    ///< either: the forms accepted
    std::shared_ptr<Shape const> item;  ///< list: the form of each item
};

struct FieldShape {
    std::string name;
    bool required = false;
    std::string doc;
    Shape shape;
};

}  // namespace asterism::yaml
