// SPDX-License-Identifier: MIT
/// What the tests of the readers share: reading a text, and asking what was reported where.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "testing.h"
#include "yaml/read.h"

namespace asterism::testing {

/// A text as read, with everything that was reported.
struct Reading {
    std::optional<yaml::Node> node;
    Diagnostics diagnostics;

    std::string tree() const { return node ? yaml::to_text(*node) : "nothing"; }
    std::vector<Diagnostic> all() const { return diagnostics.sorted(); }
    /// `code line:column` of every diagnostic, in order.
    std::vector<std::string> reported() const {
        std::vector<std::string> result;
        for (auto const& diagnostic : all()) {
            auto const at = diagnostic.span.position();
            result.push_back(diagnostic.code + " " + std::to_string(at.line) + ":" +
                             std::to_string(at.column));
        }
        return result;
    }
};

using Reported = std::vector<std::string>;

inline Reading yaml_text(std::string text) {
    Reading reading;
    reading.node = yaml::read_yaml(make_source("t.yaml", std::move(text)), reading.diagnostics);
    return reading;
}

inline Reading json_text(std::string text) {
    Reading reading;
    reading.node = yaml::read_json(make_source("t.json", std::move(text)), reading.diagnostics);
    return reading;
}

/// The bytes of the source that a span covers.
inline std::string covered(Span const& span) {
    return std::string(span.source->text().substr(span.begin, span.end - span.begin));
}

inline std::string repeated(std::string const& piece, int count) {
    std::string result;
    for (int i = 0; i < count; ++i) result += piece;
    return result;
}

}  // namespace asterism::testing
