// SPDX-License-Identifier: MIT
#include "yaml/shape.h"

namespace asterism::yaml {

Shape list_shape(Shape item, std::optional<int> least, std::optional<int> most) {
    Shape shape{Shape::Kind::list, {}, {}, {}, {}, std::make_shared<Shape const>(std::move(item))};
    shape.least = least;
    shape.most = most;
    return shape;
}

Shape map_shape(Shape value, std::string keys) {
    auto item = std::make_shared<Shape const>(std::move(value));
    return {Shape::Kind::map, std::move(keys), {}, {}, {}, std::move(item)};
}

Shape either_shape(std::vector<Shape> alternatives) {
    return {Shape::Kind::either, {}, {}, {}, std::move(alternatives), nullptr};
}

Shape word_shape(std::string refers_to) {
    return {Shape::Kind::text, std::move(refers_to), {}, {}, {}, nullptr};
}

Shape nothing_shape() { return {Shape::Kind::nothing, {}, {}, {}, {}, nullptr}; }

}  // namespace asterism::yaml
