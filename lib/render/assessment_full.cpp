// SPDX-License-Identifier: MIT
#include "render/assessment_full.h"

#include <fmt/format.h>

#include "render/assessment_view.h"
#include "render/assessment_words.h"
#include "render/escape.h"

namespace asterism {

namespace {

class FullText {
public:
    FullText(Assessment const& a, Style const& style) : a_(a), style_(style) {}

    std::string write() {
        opening();
        for (auto const& group : suggestion_groups(a_)) suggestion(group);
        listed("Why not", nearest_sentences(a_));
        listed("What would change this:", change_sentences(a_, true));
        set_aside();
        findings();
        counts();
        constellations();
        measures();
        not_examined();
        unsettled();
        actions();
        closing();
        return std::move(out_);
    }

private:
    void paragraph(std::string_view text, std::string_view first = "", std::string_view rest = "") {
        out_ += wrapped(terminal_safe(text), first, rest);
    }
    void item(std::string_view text) { paragraph(text, "  - ", "    "); }
    void detail(std::string_view text) { paragraph(text, "    ", "    "); }
    void heading(std::string_view text) {
        out_ += "\n";
        for (auto const& line : wrapped_lines(terminal_safe(text), "", "  ")) {
            out_ += style_.bold(line) + "\n";
        }
    }

    void listed(std::string_view title, std::vector<std::string> const& texts) {
        if (texts.empty()) return;
        heading(title);
        for (auto const& text : texts) item(text);
    }

    void opening() {
        bool const now = a_.urgency == Urgency::emergency;
        for (auto const& line : wrapped_lines(terminal_safe(full_headline(a_)), "", "")) {
            out_ += (now ? style_.alarm(line) : style_.bold(line)) + "\n";
        }
        auto const rest = if_normal_sentence(a_);
        if (!rest.empty()) paragraph(rest);
        for (auto const& sentence : rise_sentences(a_)) paragraph(sentence);
    }

    void suggestion(SuggestionGroup const& group) {
        heading(heading_of(group));
        for (auto const* reason : group.reasons) tell(*reason);
        for (auto const* reason : group.repeated) item("As above: " + reason->rule);
    }

    void tell(Reason const& reason) {
        item(reason.text);
        for (auto const& e : reason.evidence)
            paragraph(evidence_detail(e), "    Seen: ", "          ");
        if (!reason.caution.empty()) detail("Caution: " + reason.caution);
        detail(fmt::format("Rule {} ({}); {}; {}", reason.rule, reason.place,
                           strength_words(reason.strength), fmt::join(reason.sources, ", ")));
    }

    static std::string evidence_detail(Evidence const& e) {
        auto text = evidence_as_written(e);
        if (e.finding_class) text += fmt::format(" [{}]", class_words(*e.finding_class));
        if (!e.key.empty()) text += fmt::format("; counts as {}", e.key);
        if (e.kind == Evidence::Kind::measure && !e.value.empty()) {
            text += fmt::format(" ({})", e.threshold);
        }
        return text;
    }

    void set_aside() {
        if (a_.set_aside.empty()) return;
        heading("Set aside");
        for (auto const& s : a_.set_aside) item(fmt::format("{}: {}", s.label, s.why));
    }

    void findings() {
        if (a_.findings.empty()) return;
        heading("Recorded and concluded");
        for (auto const& e : a_.findings) {
            item(fmt::format("{} ({}{})", evidence_detail(e), e.state,
                             e.how.empty() ? "" : ", " + e.how));
        }
    }

    void counts() {
        if (a_.tallies.empty()) return;
        heading("Counts");
        for (auto const& t : a_.tallies) {
            auto const range =
                t.low == t.high ? t.low : fmt::format("{}, at most {}", t.low, t.high);
            item(fmt::format("{}: {}", t.label, range));
            if (!t.counted.empty()) detail("counted: " + evidence_list(t.counted));
        }
    }

    void constellations() {
        if (a_.constellations.empty()) return;
        heading("For the service to consider (a counting rule reached is not a diagnosis)");
        for (auto const& c : a_.constellations) constellation(c);
    }

    void constellation(ConstellationResult const& c) {
        std::string_view const state = c.reached == Truth::yes  ? "reached"
                                       : c.reached == Truth::no ? "not reached"
                                                                : "open";
        item(fmt::format("{}: {}: {} of {}, {}", c.service, c.label, c.low, c.possible, state));
        std::vector<std::string> yes, open;
        for (auto const& i : c.items) {
            if (i.value == Truth::yes) yes.push_back(i.item);
            if (i.value == Truth::unknown) open.push_back(i.item);
        }
        detail("counted: " + first_of(yes, yes.size()));
        if (!open.empty()) detail("not examined: " + first_of(open, open.size()));
        detail(fmt::format("rule: {}; {}; {}", c.rule, strength_words(c.strength),
                           fmt::join(c.sources, ", ")));
        if (!c.note.empty()) detail(c.note);
    }

    void measures() {
        if (a_.measures.empty()) return;
        heading("Measures");
        for (auto const& m : a_.measures) item(measure_words(m));
    }

    void not_examined() {
        auto const& n = a_.not_examined;
        if (n.steps.empty() && n.unsure.empty() && n.history.empty() && n.facts.empty()) return;
        heading("Not examined or not asked");
        for (auto const& s : n.steps) {
            auto const tag = s.essential ? "ESSENTIAL " : "";
            item(fmt::format("{}{} ({}): {}", tag, s.label, s.region,
                             counted(static_cast<std::size_t>(s.findings), "finding", "findings")));
        }
        for (auto const& e : n.unsure) item("unsure: " + evidence_as_written(e));
        for (auto const& h : n.history) item("ask, it could change this: " + h);
        for (auto const& f : n.facts) item("not given: " + f);
    }

    void unsettled() {
        auto const open = with_verdict(a_, Verdict::unsettled);
        if (open.empty()) return;
        heading("Unsettled");
        for (auto const* r : open) {
            std::vector<std::string> waits;
            for (auto const& s : r->settled_by) waits.push_back(s.label);
            waits.insert(waits.end(), r->open_facts.begin(), r->open_facts.end());
            auto const rest = r->if_rest_normal ? to_text(*r->if_rest_normal) : "";
            item(fmt::format("{}, if the rest were normal {}; hangs on {}", r->label, rest,
                             first_of(waits, waits.size())));
        }
    }

    void actions() {
        if (!a_.first_steps.empty()) heading("First steps");
        for (auto const& [id, text] : a_.first_steps) item(text);
        if (!a_.follow_up.empty()) heading("Follow-up");
        for (auto const& f : a_.follow_up) {
            item(fmt::format("{}: {} [{}]", due_words(f), f.text, f.rule));
        }
        if (!a_.cautions.empty()) heading("Cautions");
        for (auto const& c : a_.cautions) {
            std::vector<std::string> places;
            for (auto const& place : c.places) places.push_back(place.place());
            item(places.empty() ? c.text : fmt::format("{} ({})", c.text, fmt::join(places, ", ")));
        }
    }

    void closing() {
        out_ += "\n";
        paragraph(safety_text());
        auto const provenance = [](Provenance const& p) {
            return fmt::format("{} {} sha256 {}", p.id, p.version, p.digest);
        };
        for (auto const& text :
             {"asterism " + a_.engine + (a_.case_id.empty() ? "" : "; case " + a_.case_id),
              "rulebook " + provenance(a_.rulebook), "ontology " + provenance(a_.ontology)}) {
            for (auto const& line : wrapped_lines(terminal_safe(text), "", "  ")) {
                out_ += style_.faint(line) + "\n";
            }
        }
    }

    Assessment const& a_;
    Style const& style_;
    std::string out_;
};

}  // namespace

std::string full_text(Assessment const& assessment, Style const& style) {
    return FullText(assessment, style).write();
}

}  // namespace asterism
