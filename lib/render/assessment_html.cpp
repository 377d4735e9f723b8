// SPDX-License-Identifier: MIT
#include "render/assessment_html.h"

#include <algorithm>

#include <fmt/format.h>

#include "render/assessment_html_map.h"
#include "render/assessment_html_parts.h"
#include "render/assessment_view.h"
#include "render/assessment_words.h"
#include "render/html.h"

namespace asterism {

namespace {

class HtmlWriter {
public:
    HtmlWriter(Assessment const& a, AssessmentContext const& context) : a_(a), context_(context) {}

    std::string write() {
        header();
        m_.open("main").new_line();
        suggestions();
        first_steps();
        follow_up();
        list("cautions", "Cautions", caution_texts(), "caution");
        not_examined();
        where();
        set_aside();
        list("change", "What would change this", change_sentences(a_, true));
        list("why-not", "Why not", nearest_sentences(a_));
        constellation_section(m_, a_);
        measure_section(m_, a_, context_);
        m_.close().new_line();
        footer();
        return m_.take();
    }

private:
    void header() {
        bool const now = a_.urgency == Urgency::emergency;
        Scope const header(m_, "header", {{"class", now ? "now" : "calm"}});
        m_.element("p", "Asterism: a newborn's physical examination", {{"class", "kicker"}});
        m_.element("h1", full_headline(a_)).new_line();
        auto const rest = if_normal_sentence(a_);
        if (!rest.empty()) m_.element("p", rest).new_line();
        for (auto const& sentence : rise_sentences(a_)) m_.element("p", sentence).new_line();
        if (context_.recorded.empty()) return;
        Scope const recorded(m_, "ul", {{"class", "recorded"}});
        for (auto const& [name, value] : context_.recorded) {
            Scope const item(m_, "li");
            m_.text(name + " ").element("strong", value);
        }
    }

    void suggestions() {
        Scope const section(m_, "section", {{"aria-labelledby", "suggested"}});
        m_.element("h2", "Who should look, and why", {{"id", "suggested"}}).new_line();
        auto const groups = suggestion_groups(a_);
        if (groups.empty()) m_.element("p", "No service is suggested on what was recorded.");
        for (auto const& group : groups) suggestion_card(m_, group);
    }

    /// A section with a list, left out when the list is empty.
    void list(std::string id, std::string_view title, std::vector<std::string> const& texts,
              std::string style = "plain") {
        if (texts.empty()) return;
        Scope const section(m_, "section", {{"aria-labelledby", id}});
        m_.element("h2", title, {{"id", id}}).new_line();
        plain_list(m_, texts, std::move(style));
    }

    std::vector<std::string> caution_texts() const {
        std::vector<std::string> texts;
        for (auto const& caution : a_.cautions) texts.push_back(caution.text);
        return texts;
    }

    void first_steps() {
        if (a_.first_steps.empty()) return;
        Scope const section(m_, "section", {{"aria-labelledby", "first-steps"}});
        m_.element("h2", "First steps", {{"id", "first-steps"}}).new_line();
        Scope const steps(m_, "ol");
        for (auto const& [action, text] : a_.first_steps) m_.element("li", text).new_line();
    }

    void follow_up() {
        if (a_.follow_up.empty()) return;
        Scope const section(m_, "section", {{"aria-labelledby", "follow-up"}});
        m_.element("h2", "Follow-up", {{"id", "follow-up"}}).new_line();
        Table table(m_, "", {"When", "What"});
        for (auto const& f : a_.follow_up) table.row({due_words(f), f.text});
    }

    void not_examined() {
        auto const& n = a_.not_examined;
        if (n.steps.empty() && n.unsure.empty() && n.history.empty() && n.facts.empty()) return;
        Scope const section(m_, "section", {{"aria-labelledby", "open"}});
        m_.element("h2", "Not examined or not asked", {{"id", "open"}}).new_line();
        std::vector<std::string> essential, other, unsure;
        for (auto const* step : open_essentials(a_)) essential.push_back(step->label);
        for (auto const& step : n.steps) {
            if (!step.essential) other.push_back(fmt::format("{} ({})", step.label, step.region));
        }
        for (auto const& e : n.unsure) unsure.push_back(evidence_as_written(e));
        open_list("Essential steps still open", essential, true);
        open_list("Unsure", unsure, false);
        open_list("Not given", n.facts, false);
        open_list("History to ask, which could change this", n.history, false);
        open_list("Other steps", other, false);
    }

    void open_list(std::string_view title, std::vector<std::string> const& texts, bool essential) {
        if (texts.empty()) return;
        auto const all = first_of(texts, texts.size());
        if (texts.size() <= 6) {
            Scope const p(m_, "p", {{"class", essential ? "essential" : "plain"}});
            m_.element("strong", fmt::format("{}: ", title)).text(all + ".");
            return;
        }
        Scope const details(m_, "details", {{"class", essential ? "essential" : "plain"}});
        {
            Scope const summary(m_, "summary");
            m_.element("strong", fmt::format("{}: {}", title, texts.size()));
            if (essential) m_.text(fmt::format(", first {}", texts.front()));
        }
        plain_list(m_, texts, "plain");
    }

    void where() {
        auto const found = found_by_region(a_, context_);
        Scope const section(m_, "section", {{"aria-labelledby", "where"}});
        m_.element("h2", "What was found, and where", {{"id", "where"}}).new_line();
        Scope const both(m_, "div", {{"class", "where"}});
        {
            Scope const figure(m_, "figure");
            m_.trusted(body_map_svg(marked_regions(a_, context_), map_description(found)));
            map_legend(m_);
        }
        if (found.empty())
            m_.element("p", "No finding was recorded as present.");
        else
            finding_table(m_, found);
    }

    void set_aside() {
        if (a_.set_aside.empty()) return;
        Scope const section(m_, "section", {{"aria-labelledby", "aside"}});
        m_.element("h2", "Set aside", {{"id", "aside"}}).new_line();
        Table table(m_, "", {"Finding", "Why it does not count"});
        for (auto const& s : a_.set_aside) table.row({s.label, s.why});
    }

    void footer() {
        Scope const footer(m_, "footer");
        Scope const note(m_, "div");
        m_.open("p").element("strong", safety_text()).close().new_line();
        auto const line = [&](std::string_view name, Provenance const& p) {
            m_.element("p", fmt::format("{} {} {}, SHA-256 {}", name, p.id, p.version, p.digest));
        };
        m_.element("p", "asterism " + a_.engine);
        line("rulebook", a_.rulebook);
        line("ontology", a_.ontology);
    }

    Assessment const& a_;
    AssessmentContext const& context_;
    Markup m_;
};

}  // namespace

std::string assessment_html(Assessment const& a, AssessmentContext const& context) {
    auto const title = a.case_id.empty() ? "Assessment" : "Assessment of " + a.case_id;
    return html_page({title, assessment_html_style(), HtmlWriter(a, context).write()});
}

}  // namespace asterism
