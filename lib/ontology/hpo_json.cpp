// SPDX-License-Identifier: MIT
// OBO Graphs JSON. A release has some 20 MB, so it is read in one pass that builds no tree.
#include <algorithm>

#include <fmt/format.h>
#include <simdjson.h>

#include "ontology/hpo_builder.h"

namespace asterism {

namespace {

using simdjson::ondemand::object;
using simdjson::ondemand::value;

constexpr std::string_view replaced_by = "IAO_0100001";
constexpr std::string_view alternative_id = "hasAlternativeId";
constexpr std::string_view version_info = "versionInfo";

class GraphReader {
public:
    GraphReader(SourcePtr const& source, HpoBuilder& builder, Diagnostics& diagnostics)
        : source_(source), builder_(builder), diagnostics_(diagnostics), text_(source->text()) {}

    void read() {
        simdjson::ondemand::parser parser;
        auto document = parser.iterate(text_);
        try {
            for (auto graph : document.get_object()["graphs"].get_array())
                read_graph(graph.get_object());
        } catch (simdjson::simdjson_error const& problem) {
            char const* at = nullptr;
            bool const known = document.current_location().get(at) == simdjson::SUCCESS;
            diagnostics_.error("hpo-json", known ? span(at, 1) : span(text_.data(), 0),
                               fmt::format("not an OBO Graphs file: {}", problem.what()),
                               "expected an unaltered hp.json");
        }
    }

private:
    Span span(char const* at, std::size_t size) const {
        auto const begin = static_cast<std::size_t>(at - text_.data());
        return {source_, static_cast<std::uint32_t>(begin),
                static_cast<std::uint32_t>(std::min(begin + size, text_.size()))};
    }

    void read_graph(object graph) {
        for (auto field : graph) {
            std::string_view const key = field.unescaped_key();
            if (key == "meta") read_version(field.value().get_object());
            if (key == "nodes") {
                for (auto node : field.value().get_array()) read_node(node.value());
            }
            if (key == "edges") {
                for (auto edge : field.value().get_array()) read_edge(edge.value());
            }
        }
    }

    void read_version(object meta) {
        for (auto field : meta) {
            std::string_view const key = field.unescaped_key();
            if (key == "version") builder_.version(field.value().get_string());
            if (key != "basicPropertyValues") continue;
            for (auto property : field.value().get_array()) {
                auto const [predicate, text] = read_property(property.get_object());
                if (predicate.ends_with(version_info)) builder_.version(text);
            }
        }
    }

    std::pair<std::string, std::string> read_property(object property) {
        std::pair<std::string, std::string> result;
        for (auto field : property) {
            std::string_view const key = field.unescaped_key();
            if (key == "pred") result.first = std::string(std::string_view(field.value()));
            if (key == "val") result.second = std::string(std::string_view(field.value()));
        }
        return result;
    }

    struct Node {
        std::string id, label, replaced_by;
        std::vector<std::string> alternates;
        bool has_id = false, obsolete = false;
    };

    void read_node(value json) {
        auto const place = span(json.raw_json_token().data(), 1);
        Node node;
        for (auto field : json.get_object()) {
            std::string_view const key = field.unescaped_key();
            if (key == "id") {
                node.id = hpo_id(field.value().get_string());
                node.has_id = true;
            }
            if (key == "lbl") node.label = std::string(std::string_view(field.value()));
            if (key == "meta") read_meta(field.value().get_object(), node);
        }
        if (!node.has_id) diagnostics_.error("hpo-no-id", place, "a node without an `id`");
        if (!node.id.empty()) add(std::move(node), place);
    }

    void read_meta(object meta, Node& node) {
        for (auto field : meta) {
            std::string_view const key = field.unescaped_key();
            if (key == "deprecated") node.obsolete = field.value().get_bool();
            if (key != "basicPropertyValues") continue;
            for (auto property : field.value().get_array()) {
                auto const [predicate, text] = read_property(property.get_object());
                if (predicate.ends_with(replaced_by)) node.replaced_by = hpo_id(text);
                if (predicate.ends_with(alternative_id)) node.alternates.push_back(hpo_id(text));
            }
        }
    }

    void add(Node node, Span place) {
        for (auto& old_id : node.alternates) builder_.replacement(std::move(old_id), node.id);
        if (!node.replaced_by.empty()) builder_.replacement(node.id, node.replaced_by);
        builder_.term(std::move(node.id), std::move(node.label), node.obsolete, std::move(place));
    }

    void read_edge(value json) {
        auto const place = span(json.raw_json_token().data(), 1);
        std::string child, parent;
        bool is_a = false;
        for (auto field : json.get_object()) {
            std::string_view const key = field.unescaped_key();
            if (key == "sub") child = hpo_id(field.value().get_string());
            if (key == "obj") parent = hpo_id(field.value().get_string());
            if (key == "pred") is_a = std::string_view(field.value()) == "is_a";
        }
        if (is_a && !child.empty() && !parent.empty())
            builder_.is_a(std::move(child), std::move(parent), place);
    }

    SourcePtr const& source_;
    HpoBuilder& builder_;
    Diagnostics& diagnostics_;
    simdjson::padded_string text_;
};

}  // namespace

void read_hpo_json(SourcePtr const& source, HpoBuilder& builder, Diagnostics& diagnostics) {
    GraphReader(source, builder, diagnostics).read();
}

}  // namespace asterism
