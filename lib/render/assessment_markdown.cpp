// SPDX-License-Identifier: MIT
#include "render/assessment_markdown.h"

#include <fmt/format.h>

#include "render/assessment_view.h"
#include "render/assessment_words.h"
#include "render/markdown.h"

namespace asterism {

namespace {

class MarkdownWriter {
public:
    MarkdownWriter(Assessment const& a, AssessmentContext const& context)
        : a_(a), context_(context) {}

    std::string write() {
        opening();
        for (auto const& group : suggestion_groups(a_)) suggestion(group);
        list("Why not", nearest_sentences(a_));
        list("What would change this", change_sentences(a_, false));
        set_aside();
        constellations();
        measures();
        not_examined();
        first_steps();
        follow_up();
        cautions();
        out_ += "\n---\n\n" + markdown_safe(safety_text()) + "\n\n";
        out_ += markdown_safe(provenance_words(a_)) + "\n";
        return std::move(out_);
    }

private:
    void heading(std::string_view text) { out_ += "\n## " + markdown_safe(text) + "\n\n"; }
    void item(std::string_view text) { out_ += "- " + markdown_safe(text) + "\n"; }
    void detail(std::string_view text) { out_ += "  - " + markdown_safe(text) + "\n"; }

    void list(std::string_view title, std::vector<std::string> const& texts) {
        if (texts.empty()) return;
        heading(title);
        for (auto const& text : texts) item(text);
    }

    void opening() {
        out_ += "# " + markdown_safe(full_headline(a_)) + "\n\n";
        for (auto const& [name, value] : context_.recorded) item(name + ": " + value);
        auto const rest = if_normal_sentence(a_);
        if (!rest.empty()) out_ += "\n" + markdown_safe(rest) + "\n";
        for (auto const& text : rise_sentences(a_)) out_ += "\n" + markdown_safe(text) + "\n";
    }

    void suggestion(SuggestionGroup const& group) {
        heading(heading_of(group));
        for (auto const* reason : group.reasons) {
            item(reason->text);
            detail("Seen: " + evidence_list(reason->evidence));
            detail(fmt::format("Rule {}; {}; {}", reason->rule, strength_words(reason->strength),
                               fmt::join(reason->sources, ", ")));
        }
        for (auto const* reason : group.repeated) item("As above: " + reason->rule);
    }

    void set_aside() {
        std::vector<std::string> texts;
        for (auto const& s : a_.set_aside) texts.push_back(s.label + ": " + s.why);
        list("Set aside", texts);
    }

    void constellations() {
        std::vector<std::string> texts;
        for (auto const& c : a_.constellations) {
            if (c.reached != Truth::yes) continue;
            texts.push_back(fmt::format("{}: {}: {} of {} ({})", c.service, c.label, c.low,
                                        c.possible, fmt::join(c.sources, ", ")));
        }
        list("For the service to consider (a counting rule reached is not a diagnosis)", texts);
    }

    void measures() {
        std::vector<std::string> texts;
        for (auto const& m : a_.measures) texts.push_back(measure_words(m));
        list("Measures", texts);
    }

    void not_examined() {
        std::vector<std::string> texts;
        std::size_t others = 0;
        for (auto const* step : open_essentials(a_)) texts.push_back("essential: " + step->label);
        for (auto const& step : a_.not_examined.steps) others += step.essential ? 0 : 1;
        for (auto const& e : a_.not_examined.unsure)
            texts.push_back("unsure: " + evidence_as_written(e));
        for (auto const& h : a_.not_examined.history) texts.push_back("ask, it could matter: " + h);
        if (others > 0) texts.push_back(counted(others, "other step", "other steps"));
        list("Not examined or not asked", texts);
    }

    void first_steps() {
        std::vector<std::string> texts;
        for (auto const& [id, text] : a_.first_steps) texts.push_back(text);
        list("First steps", texts);
    }

    void follow_up() {
        std::vector<std::string> texts;
        for (auto const& f : a_.follow_up) texts.push_back(due_words(f) + ": " + f.text);
        list("Follow-up", texts);
    }

    void cautions() {
        std::vector<std::string> texts;
        for (auto const& c : a_.cautions) texts.push_back(c.text);
        list("Cautions", texts);
    }

    Assessment const& a_;
    AssessmentContext const& context_;
    std::string out_;
};

}  // namespace

std::string assessment_markdown(Assessment const& a, AssessmentContext const& context) {
    return MarkdownWriter(a, context).write();
}

}  // namespace asterism
