// SPDX-License-Identifier: MIT
#include "render/assessment_text.h"

#include <algorithm>

#include <fmt/format.h>

#include "conditions/condition.h"
#include "render/escape.h"
#include "render/layout.h"

namespace asterism {

namespace {

std::string how_soon(Urgency urgency) {
    switch (urgency) {
        case Urgency::emergency: return "emergency, call now";
        case Urgency::same_day: return "same day";
        case Urgency::urgent: return "urgent, days to two weeks";
        case Urgency::routine: return "routine";
    }
    return "";
}

std::string finding_words(Evidence const& e) {
    std::string text = e.label;
    if (e.kind == Evidence::Kind::tally) return fmt::format("{}: {} ({} decides)", e.label, e.value, e.threshold);
    if (!e.side.empty()) text += e.side == "both" ? ", both sides" : ", " + e.side;
    if (!e.grade.empty()) text += ", " + e.grade;
    if (e.familial) text += ", familial";
    if (e.state == "absent" && e.kind == Evidence::Kind::finding) text += " absent";
    if (e.how == "derived") text += " (derived)";
    return terminal_safe(text);
}

std::string evidence_words(std::vector<Evidence> const& list) {
    std::vector<std::string> words;
    for (auto const& evidence : list) {
        if (evidence.kind != Evidence::Kind::tally) words.push_back(finding_words(evidence));
    }
    for (auto const& evidence : list) {
        if (evidence.kind == Evidence::Kind::tally && evidence.id.find('/') == std::string::npos) words.push_back(finding_words(evidence));
    }
    return fmt::format("{}", fmt::join(words, "; "));
}

class TextWriter {
public:
    TextWriter(Assessment const& assessment, TextOptions options) : a_(assessment), style_(options.colour) {}

    std::string write() {
        first_line();
        if_normal();
        for (auto const& referral : by_urgency()) suggestion(*referral);
        if (suggested().empty()) nearest();
        aside();
        constellations();
        measures();
        open();
        actions();
        cautions();
        footer();
        return std::move(out_);
    }

private:
    void line(std::string_view text) { out_ += std::string(text) + "\n"; }
    void item(std::string_view text) { out_ += wrapped(text, "  - ", "    "); }
    void heading(std::string_view text) { line(""), line(style_.bold(text)); }

    std::vector<Referral const*> suggested() const {
        std::vector<Referral const*> result;
        for (auto const& referral : a_.referrals) {
            if (referral.verdict == Verdict::suggested) result.push_back(&referral);
        }
        return result;
    }

    std::vector<Referral const*> by_urgency() const {
        auto result = suggested();
        std::stable_sort(result.begin(), result.end(), [](auto const* a, auto const* b) { return *a->urgency > *b->urgency; });
        return result;
    }

    std::vector<std::string> open_essentials() const {
        std::vector<std::string> labels;
        for (auto const& step : a_.not_examined.steps) {
            if (step.essential) labels.push_back(step.label);
        }
        return labels;
    }

    /// "Essential steps still to do: red reflex, palate (and 9 more)."
    std::string essentials_sentence() const {
        auto labels = open_essentials();
        if (labels.empty()) return {};
        auto const more = labels.size() > 4 ? labels.size() - 3 : 0;
        if (more > 0) labels.resize(3);
        auto const list = fmt::format("{}", fmt::join(labels, ", "));
        return fmt::format("Essential steps still open: {}{}.", list, more ? fmt::format(" and {} more", more) : "");
    }

    void first_line() {
        std::vector<std::string> parts;
        for (auto const* referral : by_urgency()) parts.push_back(fmt::format("{} ({})", referral->label, how_soon(*referral->urgency)));
        bool const now = a_.urgency == Urgency::emergency;
        std::string text;
        if (!parts.empty()) text = fmt::format("{}: {}.", now ? "CALL NOW" : "Referral suggested", fmt::join(parts, "; "));
        else text = any_unsettled() ? "No referral suggested so far; the examination is not complete." : "No referral suggested.";
        auto const essentials = essentials_sentence();
        if (!essentials.empty()) text += " " + essentials;
        auto const painted = wrapped(text, "", "");
        out_ += now ? style_.alarm(painted) : style_.bold(painted);
    }

    bool any_unsettled() const {
        return std::any_of(a_.referrals.begin(), a_.referrals.end(), [](Referral const& r) { return r.verdict == Verdict::unsettled; });
    }

    /// One sentence for all unsettled verdicts: what they would be if the rest were normal.
    void if_normal() {
        std::vector<std::string> no, yes, open;
        for (auto const& r : a_.referrals) {
            if (r.verdict != Verdict::unsettled) continue;
            (r.if_rest_normal == Verdict::suggested ? yes : r.if_rest_normal == Verdict::unsettled ? open : no).push_back(r.label);
        }
        if (no.empty() && yes.empty() && open.empty()) return;
        std::string text = "If everything not examined were normal:";
        if (!yes.empty()) text += fmt::format(" {} would be suggested;", list_in_words(yes, "and"));
        if (!no.empty()) text += suggested().empty() && yes.empty() && open.empty() ? " no referral." : fmt::format(" no referral to {};", list_in_words(no, "or"));
        if (!open.empty()) text += fmt::format(" {} would still wait for {};", list_in_words(open, "and"), list_in_words(open_facts(), "and"));
        if (text.back() == ';') text.back() = '.';
        out_ += wrapped(text, "", "");
    }

    /// What the services that would still be open wait for.
    std::vector<std::string> open_facts() const {
        std::vector<std::string> facts;
        for (auto const& r : a_.referrals) {
            if (r.if_rest_normal != Verdict::unsettled) continue;
            for (auto const& fact : r.open_facts) {
                if (std::find(facts.begin(), facts.end(), fact) == facts.end()) facts.push_back(fact);
            }
        }
        return facts;
    }

    void suggestion(Referral const& referral) {
        heading(fmt::format("{}: {}", referral.label, how_soon(*referral.urgency)));
        for (auto const& reason : referral.reasons) {
            item(terminal_safe(reason.text));
            out_ += wrapped(evidence_words(reason.evidence), "    Seen: ", "          ");
            auto const from = fmt::format("rule {}; {}; {}", reason.rule, to_text(reason.strength), fmt::join(reason.sources, ", "));
            out_ += style_.faint(wrapped(from, "    ", "    "));
        }
        if (referral.may_rise_to) {
            item(fmt::format("Something not examined could make this {}.", how_soon(*referral.may_rise_to)));
        }
    }

    /// Why not: what the nearest rule of each service lacked.
    void nearest() {
        bool any = false;
        for (auto const& referral : a_.referrals) {
            if (referral.reasons.empty()) continue;
            if (!std::exchange(any, true)) heading("Why no referral");
            auto const& reason = referral.reasons.front();
            item(fmt::format("{}: {} did not reach {}. Lacking: {}.", referral.label, evidence_words(reason.evidence), reason.rule,
                             fmt::join(reason.lacks, "; ")));
        }
    }

    void aside() {
        if (a_.set_aside.empty()) return;
        heading("Set aside");
        for (auto const& s : a_.set_aside) item(fmt::format("{}: {}", s.label, s.why));
    }

    void constellations() {
        bool any = false;
        for (auto const& c : a_.constellations) {
            if (c.reached != Truth::yes) continue;
            if (!std::exchange(any, true)) heading("For the service to consider (a counting rule reached is not a diagnosis)");
            item(fmt::format("{}: {}: {} of {} ({}; {})", c.service, c.label, c.low, c.possible, c.rule, fmt::join(c.sources, ", ")));
            if (!c.note.empty()) out_ += wrapped(c.note, "    ", "    ");
        }
    }

    void measures() {
        if (a_.measures.empty()) return;
        heading("Measures");
        for (auto const& m : a_.measures) {
            std::string text = fmt::format("{} {}", m.label, terminal_safe(m.as_written));
            if (m.z_low && *m.z_low == *m.z_high) text += fmt::format(": z {:+.2f}", *m.z_low);
            else if (m.z_low) text += fmt::format(": z {:+.2f} to {:+.2f}", *m.z_low, *m.z_high);
            if (!m.norm.empty()) text += fmt::format(", {}", m.norm);
            if (!m.note.empty()) text += fmt::format(" ({})", m.note);
            item(text);
        }
    }

    void open() {
        auto const& n = a_.not_examined;
        if (n.steps.empty() && n.unsure.empty() && n.history.empty()) return;
        heading("Not examined or not asked");
        auto const essential = open_essentials();
        if (!essential.empty()) item(fmt::format("essential: {}", fmt::join(essential, ", ")));
        auto const others = n.steps.size() - essential.size();
        if (others > 0) item(fmt::format("and {} other step{}", others, others == 1 ? "" : "s"));
        for (auto const& unsure : n.unsure) item(fmt::format("unsure: {}", finding_words(unsure)));
        if (!n.history.empty()) item(fmt::format("history to ask, which could change this: {}", fmt::join(n.history, ", ")));
    }

    void actions() {
        if (!a_.first_steps.empty()) heading("First steps");
        for (auto const& [id, text] : a_.first_steps) item(text);
        if (!a_.follow_up.empty()) heading("Follow-up");
        for (auto const& f : a_.follow_up) {
            item(fmt::format("{}: {}", due(f), f.text));
        }
    }

    static std::string due(FollowUpResult const& f) {
        auto const to = f.to_date ? to_text(*f.to_date) : to_text(f.to) + " of age";
        if (f.from.hours == 0) return "by " + to;
        return fmt::format("{} to {}", f.from_date ? to_text(*f.from_date) : to_text(f.from), to);
    }

    void cautions() {
        if (a_.cautions.empty()) return;
        heading("Cautions");
        for (auto const& caution : a_.cautions) item(terminal_safe(caution.text));
    }

    void footer() {
        line("");
        out_ += wrapped(safety_text(), "", "");
        auto const short_digest = [](std::string const& digest) { return digest.substr(0, 12); };
        out_ += style_.faint(wrapped(fmt::format("asterism {}; rulebook {} {} ({}); ontology {} ({})", a_.engine, a_.rulebook.id, a_.rulebook.version,
                                                 short_digest(a_.rulebook.digest), a_.ontology.version, short_digest(a_.ontology.digest)), "", ""));
    }

    Assessment const& a_;
    Style style_;
    std::string out_;
};

}  // namespace

std::string_view safety_text() {
    return "Decision support for trained clinicians. It does not replace the examination, the senior clinician or local "
           "pathways. Signs of distress end the examination and call for help. What was found is worth talking over with "
           "the family, with care. Nothing here is a diagnosis.";
}

std::string assessment_text(Assessment const& assessment, TextOptions options) { return TextWriter(assessment, options).write(); }

std::string trace_text(std::vector<TraceLine> const& lines, std::string_view rule) {
    std::string out = fmt::format("Rule {}\n", rule);
    for (auto const& line : lines) {
        auto const indent = std::string(static_cast<std::size_t>(2 + 2 * line.depth), ' ');
        auto const value = fmt::format("{:<8}", to_text(line.value));
        auto const seen = line.seen.empty() ? std::string() : fmt::format("  [{}]", terminal_safe(line.seen));
        out += wrapped(value + line.text + seen, indent, indent + "        ");
    }
    return out;
}

}  // namespace asterism
