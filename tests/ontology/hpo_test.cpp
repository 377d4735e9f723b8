// SPDX-License-Identifier: MIT
// HPO files in small. Ids, labels and is-a pairs are those of the release 2024-08-13 (facts/hpo):
// HP:0000578 is an alternate id of HP:0000316, HP:0000057 is obsolete and replaced by HP:0008665.
#include <zlib.h>

#include "ontology/hpo.h"
#include "testing.h"

using namespace asterism;

namespace {

std::string const obo = R"(format-version: 1.2
data-version: hp/releases/2024-08-13

[Term]
id: HP:0000001
name: All

[Term]
id: HP:0000118
name: Phenotypic abnormality
is_a: HP:0000001 ! All

[Term]
id: HP:0000316
name: Hypertelorism
alt_id: HP:0000578
alt_id: HP:0002001
is_a: HP:0000118 {source="x"} ! Phenotypic abnormality

[Term]
id: HP:0008665
name: Clitoral hypertrophy
is_a: HP:0000118 ! Phenotypic abnormality

[Term]
id: HP:0000057
name: obsolete Clitoromegaly
is_obsolete: true
replaced_by: HP:0008665

[Term]
id: MONDO:0000001
name: another ontology
is_a: HP:0000118

[Typedef]
id: part_of
name: part of
)";

std::string const json = R"({"graphs": [{"id": "http://purl.obolibrary.org/obo/hp.json",
 "meta": {"basicPropertyValues": [{"pred": "http://www.w3.org/2002/07/owl#versionInfo", "val": "x"}],
          "version": "http://purl.obolibrary.org/obo/hp/releases/2024-08-13/hp.json"},
 "nodes": [
  {"id": "http://purl.obolibrary.org/obo/HP_0000001", "lbl": "All", "type": "CLASS"},
  {"id": "http://purl.obolibrary.org/obo/HP_0000118", "lbl": "Phenotypic abnormality"},
  {"id": "http://purl.obolibrary.org/obo/HP_0000316", "lbl": "Hypertelorism", "meta": {
     "definition": {"val": "…", "xrefs": []},
     "basicPropertyValues": [
      {"pred": "http://www.geneontology.org/formats/oboInOwl#hasAlternativeId", "val": "HP:0000578"},
      {"pred": "http://www.geneontology.org/formats/oboInOwl#hasAlternativeId", "val": "HP:0002001"}]}},
  {"id": "http://purl.obolibrary.org/obo/HP_0008665", "lbl": "Clitoral hypertrophy"},
  {"id": "http://purl.obolibrary.org/obo/HP_0000057", "lbl": "obsolete Clitoromegaly", "meta": {
     "basicPropertyValues": [{"pred": "http://purl.obolibrary.org/obo/IAO_0100001", "val": "HP:0008665"}],
     "deprecated": true}},
  {"id": "http://purl.obolibrary.org/obo/MONDO_0000001", "lbl": "another ontology"}],
 "edges": [
  {"sub": "http://purl.obolibrary.org/obo/HP_0000118", "pred": "is_a", "obj": "http://purl.obolibrary.org/obo/HP_0000001"},
  {"sub": "http://purl.obolibrary.org/obo/HP_0000316", "pred": "is_a", "obj": "http://purl.obolibrary.org/obo/HP_0000118"},
  {"sub": "http://purl.obolibrary.org/obo/HP_0000316", "pred": "part_of", "obj": "http://purl.obolibrary.org/obo/HP_0008665"},
  {"sub": "http://purl.obolibrary.org/obo/HP_0008665", "pred": "is_a", "obj": "http://purl.obolibrary.org/obo/HP_0000118"}]}]})";

std::optional<Hpo> read(std::string text, Diagnostics& diagnostics) {
    return read_hpo(make_source("hp", std::move(text)), diagnostics);
}

/// `line:column code: message` of the first problem; empty when there is none.
std::string refusal(std::string text) {
    Diagnostics diagnostics;
    auto const hpo = read(std::move(text), diagnostics);
    auto const all = diagnostics.sorted();
    CHECK(hpo.has_value() == all.empty());
    if (all.empty()) return {};
    auto const at = all.front().span.position();
    return std::to_string(at.line) + ":" + std::to_string(at.column) + " " + all.front().code +
           ": " + all.front().message;
}

std::string with(std::string text, std::string_view from, std::string_view to) {
    auto const at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

std::string gzip(std::string const& text) {
    std::string packed(text.size() + 100, '\0');
    z_stream stream{};
    REQUIRE(deflateInit2(&stream, 9, Z_DEFLATED, 15 + 16, 8, Z_DEFAULT_STRATEGY) == Z_OK);
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(text.data()));
    stream.avail_in = static_cast<uInt>(text.size());
    stream.next_out = reinterpret_cast<Bytef*>(packed.data());
    stream.avail_out = static_cast<uInt>(packed.size());
    REQUIRE(deflate(&stream, Z_FINISH) == Z_STREAM_END);
    packed.resize(stream.total_out);
    deflateEnd(&stream);
    return packed;
}

}  // namespace

TEST_CASE("OBO text and OBO Graphs JSON say the same") {
    for (auto const* text : {&obo, &json}) {
        CAPTURE(text->substr(0, 20));
        Diagnostics diagnostics;
        auto const hpo = read(*text, diagnostics);
        REQUIRE(hpo);
        CHECK(diagnostics.empty());
        CHECK(hpo->version() == "2024-08-13");
        CHECK(hpo->size() == 5);
        CHECK(hpo->find("HP:0000316")->label == "Hypertelorism");
        CHECK(hpo->current("HP:0000316") == "HP:0000316");
        CHECK(hpo->current("HP:0000578") == "HP:0000316");
        CHECK(hpo->current("HP:0002001") == "HP:0000316");
        CHECK(hpo->current("HP:0000057") == "HP:0008665");
        CHECK(hpo->current("HP:1234567").empty());
        auto const above = hpo->above("HP:0000316");
        REQUIRE(above.size() == 2);
        CHECK(above[0] == std::vector<std::string>{"HP:0000118"});
        CHECK(above[1] == std::vector<std::string>{"HP:0000001"});
    }
}

TEST_CASE("line ends of other systems and a missing last one are read") {
    std::string crlf;
    for (auto const c : obo) crlf += c == '\n' ? std::string("\r\n") : std::string(1, c);
    Diagnostics diagnostics;
    auto const hpo = read(crlf, diagnostics);
    REQUIRE(hpo);
    CHECK(hpo->find("HP:0000316")->label == "Hypertelorism");
    auto const end = read(obo.substr(0, obo.find("\n[Typedef]") - 1), diagnostics);
    CHECK(end);
}

TEST_CASE("a ring of is-a is named at its place") {
    auto const ring = with(obo, "id: HP:0000001\nname: All\n",
                           "id: HP:0000001\nname: All\nis_a: HP:0000316 ! Hypertelorism\n");
    auto const text = refusal(ring);
    CHECK(text.find("hpo-cycle") != std::string::npos);
    CHECK(text.find("leads back to `HP:") != std::string::npos);
    // A term below the ring is not blamed.
    CHECK(text.find("`HP:0008665` is a kind") == std::string::npos);
    auto const own = with(obo, "is_a: HP:0000118 {source=\"x\"}", "is_a: HP:0000316");
    CHECK(refusal(own) ==
          "18:1 hpo-cycle: `HP:0000316` is a kind of `HP:0000316`, which leads back to "
          "`HP:0000316`");
    auto const in_json = with(json, R"("obj": "http://purl.obolibrary.org/obo/HP_0000001")",
                              R"("obj": "http://purl.obolibrary.org/obo/HP_0000316")");
    CHECK(refusal(in_json).find("hpo-cycle") != std::string::npos);
}

TEST_CASE("a term without an id, twice, or below nothing is named at its place") {
    CHECK(refusal(with(obo, "id: HP:0000118\n", "")) ==
          "8:1 hpo-no-id: a term without an `id:` line");
    CHECK(refusal(with(obo, "id: HP:0008665", "id: HP:0000316")).find("hpo-twice") !=
          std::string::npos);
    CHECK(refusal(with(obo, "is_a: HP:0000118 {", "is_a: HP:0000119 {")) ==
          "18:1 hpo-unknown-term: `HP:0000316` is a kind of `HP:0000119`, but the file does not "
          "describe `HP:0000119`");
    auto const nameless = with(json, R"("id": "http://purl.obolibrary.org/obo/HP_0000118", )", "");
    CHECK(refusal(nameless) == "6:3 hpo-no-id: a node without an `id`");
}

TEST_CASE("wrong types and torn JSON are refused with a place") {
    CHECK(refusal(with(json, R"("lbl": "All")", R"("lbl": 5)")).find("5:") == 0);
    CHECK(refusal(with(json, R"("deprecated": true)", R"("deprecated": "yes")"))
              .find("hpo-json: not an OBO Graphs file") != std::string::npos);
    CHECK(refusal(R"({"graphs": 5})").find("hpo-json") != std::string::npos);
    CHECK(refusal(R"({"nodes": []})").find("hpo-json") != std::string::npos);
    CHECK(refusal(R"({"graphs": []})").find("not-hpo") != std::string::npos);
    CHECK_FALSE(refusal("").empty());
    CHECK_FALSE(refusal("case: demo\n").empty());
    CHECK_FALSE(refusal("format-version: 1.2\n").empty());
}

TEST_CASE("any truncation of either form ends in a graph or an error, never a crash") {
    for (auto const* text : {&obo, &json}) {
        for (std::size_t size = 0; size < text->size(); size += 7) {
            Diagnostics diagnostics;
            auto const hpo = read(text->substr(0, size), diagnostics);
            CHECK(hpo.has_value() != diagnostics.has_errors());
        }
    }
}

TEST_CASE("a flipped byte never crashes") {
    for (auto const* text : {&obo, &json}) {
        for (std::size_t at = 0; at < text->size(); at += 11) {
            auto copy = *text;
            copy[at] = static_cast<char>(copy[at] ^ 0x15);
            Diagnostics diagnostics;
            auto const hpo = read(copy, diagnostics);
            CHECK(hpo.has_value() != diagnostics.has_errors());
        }
    }
}

TEST_CASE("gzip is unpacked within bounds") {
    auto const packed = gzip(obo);
    CHECK(is_gzip(packed));
    CHECK_FALSE(is_gzip(obo));
    CHECK(unpack_gzip(packed, 1u << 20).value() == obo);
    CHECK_FALSE(unpack_gzip(packed, 100));
    CHECK_FALSE(unpack_gzip(packed.substr(0, packed.size() / 2), 1u << 20));
    CHECK_FALSE(unpack_gzip("\x1f\x8bnonsense", 1u << 20));
    // A bomb: 64 MB of zeros in some 64 kB.
    CHECK_FALSE(unpack_gzip(gzip(std::string(64u << 20, '\0')), 1u << 20));
}
