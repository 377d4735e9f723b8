// SPDX-License-Identifier: MIT
#include "render/schema.h"

#include <nlohmann/json.hpp>
#include <set>

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;
using yaml::Shape;

Json any_text() { return {{"type", {"string", "number", "boolean"}}, {"minLength", 1}}; }

class Writer {
public:
    explicit Writer(SchemaNames const& names) : names_(names) {}

    Json value(Shape const& shape) {
        switch (shape.kind) {
            case Shape::Kind::text: return text(shape.refers_to);
            case Shape::Kind::integer: return integer(shape);
            case Shape::Kind::number: return {{"type", "number"}};
            case Shape::Kind::boolean: return {{"type", "boolean"}};
            case Shape::Kind::list: return list(shape);
            case Shape::Kind::record: return record(shape);
            case Shape::Kind::map: return map(shape);
            case Shape::Kind::choice: return {{"enum", shape.choices}};
            case Shape::Kind::either: return either(shape);
            case Shape::Kind::nothing: return {{"type", "null"}};
            case Shape::Kind::any: return reference(shape.refers_to);
        }
        return Json::object();
    }

    /// Every definition that was referred to, and what those refer to in turn.
    Json definitions() {
        Json result = Json::object();
        while (!open_.empty()) {
            auto const name = *open_.begin();
            open_.erase(open_.begin());
            result[name] = definition(name);
        }
        return result;
    }

private:
    Json definition(std::string const& name) {
        if (auto const form = names_.forms.find(name); form != names_.forms.end())
            return value(form->second);
        Json offered{{"enum", names_.offered.at(name)}};
        return {{"anyOf", {std::move(offered), any_text()}}};
    }

    Json reference(std::string const& name) {
        if (!names_.forms.contains(name) && !names_.offered.contains(name)) return Json::object();
        if (known_.insert(name).second) open_.insert(name);
        return {{"$ref", "#/definitions/" + name}};
    }

    Json text(std::string const& refers_to) {
        return names_.offered.contains(refers_to) ? reference(refers_to) : any_text();
    }

    static Json integer(Shape const& shape) {
        Json result{{"type", "integer"}};
        if (shape.least) result["minimum"] = *shape.least;
        if (shape.most) result["maximum"] = *shape.most;
        return result;
    }

    Json list(Shape const& shape) {
        Json result{{"type", "array"}, {"items", value(*shape.item)}};
        if (shape.least) result["minItems"] = *shape.least;
        if (shape.most) result["maxItems"] = *shape.most;
        return result;
    }

    Json map(Shape const& shape) {
        Json result{{"type", "object"}, {"additionalProperties", value(*shape.item)}};
        if (names_.offered.contains(shape.refers_to))
            result["propertyNames"] = reference(shape.refers_to);
        return result;
    }

    Json record(Shape const& shape) {
        Json result{{"type", "object"}, {"properties", Json::object()}};
        Json required = Json::array();
        for (auto const& field : shape.fields) {
            auto property = value(field.shape);
            // Beside a reference, draft-07 ignores every other keyword.
            if (property.contains("$ref")) property = {{"allOf", Json::array({property})}};
            property["description"] = field.doc;
            result["properties"][field.name] = std::move(property);
            if (field.required) required.push_back(field.name);
        }
        if (!required.empty()) result["required"] = std::move(required);
        if (shape.least) result["minProperties"] = *shape.least;
        result["additionalProperties"] = shape.item ? value(*shape.item) : Json(false);
        return result;
    }

    Json either(Shape const& shape) {
        Json forms = Json::array();
        for (auto const& form : shape.alternatives) forms.push_back(value(form));
        return {{"anyOf", std::move(forms)}};
    }

    SchemaNames const& names_;
    std::set<std::string> known_, open_;
};

}  // namespace

Json schema_json(std::string_view title, Shape const& shape, SchemaNames const& names) {
    Writer writer(names);
    Json result{{"$schema", "http://json-schema.org/draft-07/schema#"}, {"title", title}};
    result.update(writer.value(shape));
    result["definitions"] = writer.definitions();
    return result;
}

}  // namespace asterism
