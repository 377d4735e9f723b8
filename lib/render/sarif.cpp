// SPDX-License-Identifier: MIT
#include "render/sarif.h"

#include <algorithm>
#include <set>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "base/digest.h"
#include "review/codes.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

/// A path as a URI reference: every byte but the unreserved ones and `/` is written as %XX.
std::string uri(std::string_view path) {
    std::string result;
    for (unsigned char const byte : path) {
        bool const plain =
            (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') ||
            (byte >= '0' && byte <= '9') ||
            std::string_view("-._~/").find(static_cast<char>(byte)) != std::string_view::npos;
        result += plain ? std::string(1, static_cast<char>(byte)) : fmt::format("%{:02X}", byte);
    }
    return result;
}

Json region(Span const& span) {
    auto const begin = span.position();
    auto const end = span.source->position(std::max(span.end, span.begin));
    return {{"startLine", begin.line},
            {"startColumn", begin.column},
            {"endLine", end.line},
            {"endColumn", end.column}};
}

Json location(Span const& span) {
    return {
        {"physicalLocation",
         {{"artifactLocation", {{"uri", uri(span.source->name())}}}, {"region", region(span)}}}};
}

/// The same for the same problem in the same file, wherever it has moved to.
std::string fingerprint(Diagnostic const& diagnostic) {
    auto const file = diagnostic.span.known() ? diagnostic.span.source->name() : std::string();
    auto const text = diagnostic.code + "\n" + file + "\n" + diagnostic.message;
    return digest({make_source("", text)}).substr(0, 32);
}

Json rule(CodePage const& page) {
    return {{"id", page.code},
            {"shortDescription", {{"text", page.means}}},
            {"fullDescription", {{"text", fmt::format("{} {}", page.means, page.matters)}}},
            {"help", {{"text", fmt::format("{} For example: {}", page.mend, page.example)}}}};
}

Json rules(std::vector<Diagnostic> const& all) {
    std::set<std::string> codes;
    for (auto const& diagnostic : all) codes.insert(diagnostic.code);
    Json list = Json::array();
    for (auto const& code : codes) {
        auto const* page = find_code(code);
        list.push_back(page ? rule(*page) : Json{{"id", code}});
    }
    return list;
}

Json result(Diagnostic const& diagnostic) {
    auto const& help = diagnostic.help;
    auto const text = help.empty() ? diagnostic.message : diagnostic.message + " (" + help + ")";
    Json one{{"ruleId", diagnostic.code},
             {"level", to_text(diagnostic.severity)},
             {"message", {{"text", text}}}};
    if (diagnostic.span.known()) one["locations"] = Json::array({location(diagnostic.span)});
    for (auto const& related : diagnostic.related) {
        if (!related.span.known()) continue;
        auto other = location(related.span);
        other["message"] = {{"text", related.message}};
        one["relatedLocations"].push_back(std::move(other));
    }
    one["partialFingerprints"] = {{"codeAndMessage/v1", fingerprint(diagnostic)}};
    return one;
}

Json invocation(bool loaded) {
    Json one{{"executionSuccessful", loaded}};
    if (!loaded) {
        one["toolExecutionNotifications"] = Json::array(
            {{{"level", "error"},
              {"message",
               {{"text", "the book could not be loaded; checks that need it were not made"}}}}});
    }
    return one;
}

}  // namespace

Json sarif_log(Diagnostics const& diagnostics, bool loaded, std::string_view version) {
    auto const all = diagnostics.sorted();
    Json results = Json::array();
    for (auto const& diagnostic : all) results.push_back(result(diagnostic));
    Json driver{{"name", "asterism"}, {"semanticVersion", version}, {"rules", rules(all)}};
    Json run{{"tool", {{"driver", std::move(driver)}}},
             {"columnKind", "unicodeCodePoints"},
             {"invocations", Json::array({invocation(loaded)})},
             {"results", std::move(results)}};
    return {{"$schema", "https://json.schemastore.org/sarif-2.1.0.json"},
            {"version", "2.1.0"},
            {"runs", Json::array({std::move(run)})}};
}

}  // namespace asterism
