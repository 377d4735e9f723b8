// SPDX-License-Identifier: MIT
// The brief answer keeps its promises on babies of the shipped book: at most 40 lines of at most 80
// columns, and the first line names an essential step that is open.
#include <algorithm>
#include <random>

#include <fmt/format.h>

#include "base/fold.h"
#include "format_book.h"
#include "render/assessment_text.h"
#include "render/assessment_view.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

/// A baby as a file would describe it: up to `most` findings that its sex can have, some steps
/// done.
class RandomBaby {
public:
    RandomBaby(Ontology const& ontology, unsigned seed) : ontology_(ontology), random_(seed) {}

    std::string text(std::size_t most) {
        bool const girl = chance(2);
        std::string out = fmt::format("case: random\nsex: {}\n", girl ? "female" : "male");
        if (chance(2)) out += "gestation: 38w2d\nage: 30h\n";
        if (chance(2)) out += "born: 2031-04-02\n";
        out += "findings: [" + findings(most, girl ? Sex::male : Sex::female) + "]\n";
        return out + examined();
    }

private:
    bool chance(unsigned one_in) { return random_() % one_in == 0; }

    std::string findings(std::size_t most, Sex excluded) {
        std::string list;
        auto const number = random_() % (most + 1);
        for (std::size_t i = 0; i < number; ++i) {
            auto const& finding = ontology_.findings[random_() % ontology_.findings.size()];
            auto const entry = fmt::format("{{ finding: {} }}", finding.id.text);
            bool const again = list.find(entry) != std::string::npos;
            if (finding.sex == excluded || again) continue;
            list += (list.empty() ? "" : ", ") + entry;
        }
        return list;
    }

    std::string examined() {
        if (chance(3)) return "examined: all\n";
        if (chance(4)) return "";
        std::string list;
        for (auto const& step : ontology_.steps) {
            if (step.result || ontology_.regions[step.region].history || chance(3)) continue;
            list += (list.empty() ? "" : ", ") + step.id.text;
        }
        return "examined: [" + list + "]\n";
    }

    Ontology const& ontology_;
    std::mt19937 random_;
};

int widest(std::string const& text) {
    int width = 0;
    for (auto const& line : lines_of(text)) width = std::max(width, display_width(line));
    return width;
}

std::string without_colour(std::string text) {
    for (auto at = text.find('\x1b'); at != std::string::npos; at = text.find('\x1b')) {
        text.erase(at, text.find('m', at) - at + 1);
    }
    return text;
}

std::string squeezed(std::string text) {
    std::erase_if(text, [](char c) { return c == ' ' || c == '\n'; });
    return text;
}

bool first_line_names_a_step(Assessment const& a, std::string const& line) {
    auto const steps = open_essentials(a);
    return steps.empty() || line.find(steps.front()->label) != std::string::npos;
}

}  // namespace

TEST_CASE("random babies of the shipped book fit a page") {
    auto const& book = shipped_book();
    std::size_t suggested = 0, essentials = 0, cut = 0;
    for (unsigned seed = 1; seed <= 200; ++seed) {
        auto const text = RandomBaby(*book.ontology, seed).text(seed % 3 == 0 ? 25 : 5);
        auto const a = judged(book, text).assessment;
        auto const brief = assessment_text(a);
        auto const lines = lines_of(brief);
        INFO("seed ", seed, "\n", text, brief);
        CHECK(lines.size() <= static_cast<std::size_t>(brief_lines));
        CHECK(widest(brief) <= 80);
        CHECK(first_line_names_a_step(a, lines.front()));
        CHECK(brief.find("Nothing here is a diagnosis") != std::string::npos);
        CHECK(widest(assessment_text(a, {false, Detail::full})) <= 80);
        suggested += a.urgency ? 1 : 0;
        essentials += open_essentials(a).empty() ? 0 : 1;
        cut += brief.find("--detail full") == std::string::npos ? 0 : 1;
    }
    CHECK(suggested > 80);
    CHECK(essentials > 40);
    CHECK(cut > 20);
}

TEST_CASE("colour adds nothing but colour") {
    for (auto const* name : {"quiet", "two-services", "everything"}) {
        auto const a = golden_case(name).assessment;
        for (auto const detail : {Detail::brief, Detail::full}) {
            auto const painted = assessment_text(a, {true, detail});
            CHECK(painted != assessment_text(a, {false, detail}));
            CHECK(without_colour(painted) == assessment_text(a, {false, detail}));
        }
    }
}

TEST_CASE("the full answer leaves nothing out") {
    auto const a = golden_case("everything").assessment;
    auto const full = squeezed(assessment_text(a, {false, Detail::full}));
    auto const has = [&](std::string const& text) {
        INFO(text);
        CHECK(full.find(squeezed(text)) != std::string::npos);
    };
    for (auto const& r : a.referrals) {
        has(r.label);
        if (r.verdict != Verdict::suggested) continue;
        for (auto const& reason : r.reasons) has(reason.text), has(reason.place);
    }
    for (auto const& step : a.not_examined.steps) has(step.label);
    for (auto const& caution : a.cautions) has(caution.text);
    for (auto const& [id, text] : a.first_steps) has(text);
    for (auto const& finding : a.findings) has(finding.label);
    for (auto const& c : a.constellations) has(c.label), has(c.note);
    has(a.rulebook.digest), has(a.ontology.digest);
}

TEST_CASE("the first line by case") {
    auto const first = [](std::string const& name) {
        return lines_of(assessment_text(golden_case(name).assessment)).front();
    };
    CHECK(first("quiet") == "No referral suggested.");
    CHECK(first("two-services").starts_with("Urgent: genetics; routine: orthopaedics."));
    CHECK(first("everything").starts_with("CALL NOW: senior clinician"));
}
