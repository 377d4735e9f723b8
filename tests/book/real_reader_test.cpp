// SPDX-License-Identifier: MIT
// The packets of phenopackets_test.cpp once more, now through the readers that the program uses.
// The reading of the tests and the program's share no code, so agreement is a check of both. The
// denominator is the one fixed there; nothing is grouped or ranked by disease.
#include <algorithm>
#include <chrono>
#include <fstream>
#include <map>
#include <sstream>

#include <fmt/format.h>

#include "assess/assess.h"
#include "cases/phenopacket.h"
#include "ontology/hpo.h"
#include "packet_study.h"
#include "shipped_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

constexpr std::size_t most_hpo_bytes = 200u << 20;

std::string bytes_of(std::filesystem::path const& path) {
    std::ifstream stream(path, std::ios::binary);
    REQUIRE(stream);
    std::ostringstream bytes;
    bytes << stream.rdbuf();
    return std::move(bytes).str();
}

Hpo const& release(std::filesystem::path const& file) {
    static Hpo const hpo = [&] {
        auto const text = unpack_gzip(bytes_of(file), most_hpo_bytes);
        REQUIRE(text);
        Diagnostics diagnostics;
        auto read = read_hpo(make_source("hp.json", *text), diagnostics);
        REQUIRE(read);
        return std::move(*read);
    }();
    return hpo;
}

ImportedCase read_packet(std::filesystem::path const& path, Hpo const* hpo) {
    Diagnostics diagnostics;
    auto cases = read_phenopackets(make_source(path.string(), bytes_of(path)),
                                   {*shipped_book().ontology, hpo}, diagnostics);
    CAPTURE(path.string());
    for (auto const& diagnostic : diagnostics.sorted()) {
        if (diagnostic.severity == Severity::error)
            FAIL(diagnostic.span.place(), ": ", diagnostic.message);
    }
    REQUIRE(cases.size() == 1);
    return std::move(cases.front());
}

std::vector<FindingId> found(std::vector<Statement> const& statements) {
    std::vector<FindingId> ids;
    for (auto const& statement : statements) ids.push_back(statement.finding);
    std::sort(ids.begin(), ids.end());
    ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
    return ids;
}

bool suggests_genetics(Case const& baby) {
    for (auto const& referral : assess(shipped_book(), baby).referrals) {
        if (referral.service == "genetics") return referral.verdict == Verdict::suggested;
    }
    return false;
}

struct Study {
    std::vector<JudgedPacket> packets;
    std::vector<ImportedCase> cases;
    Hpo const* hpo = nullptr;
};

Study const* study() {
    auto const hpo = data_file("hpo/hp-2024-08-13.json.gz");
    auto const folder = data_file("phenopackets");
    if (!hpo || !folder) return nullptr;
    static Study const result = [&] {
        Study s;
        s.hpo = &release(*hpo);
        s.packets = judge_packets(*folder, HpoGraph(*hpo));
        for (auto const& packet : s.packets)
            s.cases.push_back(read_packet(*folder / packet.file, s.hpo));
        return s;
    }();
    return &result;
}

}  // namespace

TEST_CASE("a whole release reads as the tests' own reading does") {
    auto const file = data_file("hpo/hp-2024-08-13.json.gz");
    if (!file) return;
    auto const& hpo = release(*file);
    HpoGraph const other(*file);
    CHECK(hpo.version() == "2024-08-13");
    CHECK(hpo.size() == other.size());
    CHECK(hpo.size() == 19435);  // counted in facts/hpo/README.md
    for (auto const* id : {"HP:0000578", "HP:0000057", "HP:0000369", "HP:0002373", "HP:0000478"}) {
        CAPTURE(id);
        CHECK(hpo.current(id) == other.current(id));
        auto const mine = hpo.above(hpo.current(id));
        auto const theirs = other.above(other.current(id));
        REQUIRE(mine.size() == theirs.size());
        for (std::size_t i = 0; i < mine.size(); ++i)
            CHECK(std::set<std::string>(mine[i].begin(), mine[i].end()) == theirs[i]);
    }
    CHECK(hpo.current("HP:9999999").empty());
}

TEST_CASE("every packet reads without an error and as the tests' own reading does") {
    auto const* s = study();
    if (!s) return;
    CHECK(s->packets.size() == 380);
    std::size_t later = 0;
    for (std::size_t i = 0; i < s->packets.size(); ++i) {
        auto const& packet = s->packets[i].mapped;
        auto const& imported = s->cases[i];
        CAPTURE(s->packets[i].file);
        CHECK(imported.terms.size() == packet.observed.size() + packet.excluded.size());
        auto const not_now =
            std::count_if(imported.terms.begin(), imported.terms.end(),
                          [](auto const& term) { return term.state == TermState::not_now; });
        later += static_cast<std::size_t>(not_now);
        if (not_now > 0) continue;  // an onset after the last encounter: only the program looks
        CHECK(found(imported.baby.present) == packet.present);
        CHECK(found(imported.baby.absent) == packet.absent);
    }
    fmt::print("terms whose onset lies after the last encounter: {}\n", later);
}

TEST_CASE("how terms were mapped, by age group") {
    auto const* s = study();
    if (!s) return;
    fmt::print("\n{:<14} {:>6} | {:>6} {:>9} {:>7} {:>8} | {:>6} {:>9} {:>8}\n", "", "", "exact",
               "ancestor", "shared", "nowhere", "exact", "from above", "nowhere");
    std::size_t counted = 0, terms = 0;
    for (auto const group : age_groups) {
        std::map<std::pair<bool, asterism::Mapping>, std::size_t> count;
        std::size_t packets = 0;
        for (std::size_t i = 0; i < s->packets.size(); ++i) {
            if (s->packets[i].age != group) continue;
            ++packets;
            terms += s->cases[i].terms.size();
            for (auto const& term : s->cases[i].terms)
                ++count[{term.state == TermState::excluded, term.how}];
        }
        using M = asterism::Mapping;
        fmt::print("{:<14} {:>6} | {:>6} {:>9} {:>7} {:>8} | {:>6} {:>9} {:>8}\n", to_text(group),
                   packets, count[{false, M::exact}], count[{false, M::by_ancestor}],
                   count[{false, M::shared_id}], count[{false, M::nowhere}],
                   count[{true, M::exact}], count[{true, M::from_above}],
                   count[{true, M::nowhere}]);
        for (auto const& [key, number] : count) counted += number;
        CHECK(count[{true, M::by_ancestor}] == 0);  // an exclusion never goes up
    }
    CHECK(counted == terms);  // none is dropped
}

TEST_CASE("dysmorphic patients under one year reach genetics through the program's reader") {
    auto const* s = study();
    if (!s) return;
    std::size_t all = 0, reached = 0;
    for (std::size_t i = 0; i < s->packets.size(); ++i) {
        if (!in_denominator(s->packets[i])) continue;
        ++all;
        bool const now = suggests_genetics(s->cases[i].baby);
        reached += now ? 1 : 0;
        if (!now) fmt::print("not reached: {}\n", s->packets[i].file);
    }
    fmt::print("reached through the program's reader: {} of {}\n", reached, all);
    CHECK(all > 0);
    CHECK(100 * reached >= 97 * all);
}

TEST_CASE("diseases and interpretations change nothing, whatever they hold") {
    auto const* s = study();
    if (!s) return;
    for (auto const& imported : s->cases) {
        for (auto const& term : imported.terms) CHECK(term.id.text.starts_with("HP:"));
        for (auto const& left : imported.left_out) {
            bool const answer = left.what == "diseases" || left.what == "interpretations";
            if (answer) CHECK(left.why.starts_with("never read"));
        }
    }
}

TEST_CASE("without HPO only exact ids map") {
    auto const folder = data_file("phenopackets");
    auto const* s = study();
    if (!folder || !s) return;
    std::size_t exact = 0, with_hpo = 0;
    for (std::size_t i = 0; i < s->packets.size(); i += 10) {
        auto const imported = read_packet(*folder / s->packets[i].file, nullptr);
        for (auto const& term : imported.terms) {
            CHECK(term.how != asterism::Mapping::by_ancestor);
            CHECK(term.how != asterism::Mapping::from_above);
            exact += term.how == asterism::Mapping::exact ? 1 : 0;
        }
        for (auto const& term : s->cases[i].terms)
            with_hpo += term.how == asterism::Mapping::exact ? 1 : 0;
    }
    CHECK(exact > 0);
    CHECK(exact <= with_hpo);
}
