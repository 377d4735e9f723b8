// SPDX-License-Identifier: MIT
#include "render/consult.h"

#include <algorithm>

#include <fmt/format.h>

#include "render/assessment_view.h"
#include "render/assessment_words.h"
#include "render/escape.h"
#include "render/layout.h"

namespace asterism {

namespace {

class ConsultWriter {
public:
    ConsultWriter(Assessment const& a, AssessmentContext const& context)
        : a_(a), context_(context) {}

    std::string write() {
        out_ += "REFERRAL NOTE (draft from recorded findings; read it before you send it)\n";
        situation();
        background();
        assessment();
        recommendation();
        out_ += "\n" + wrapped(safety_text(), "", "");
        out_ += wrapped(terminal_safe(provenance_words(a_)), "", "");
        return std::move(out_);
    }

private:
    void heading(std::string_view text) { out_ += "\n" + std::string(text) + "\n"; }
    void line(std::string_view text) { out_ += wrapped(terminal_safe(text), "  ", "    "); }
    void item(std::string_view text) { out_ += wrapped(terminal_safe(text), "  - ", "    "); }
    void titled(std::string_view title, std::vector<std::string> const& texts) {
        if (texts.empty()) return;
        line(std::string(title) + ":");
        for (auto const& text : texts) item(text);
    }

    bool is_history(Evidence const& e) const {
        auto const region = context_.region_of_finding.find(e.id);
        return region != context_.region_of_finding.end() &&
               region->second == context_.history_region;
    }

    /// What was stated, in the recorder's own words.
    std::vector<std::string> stated(std::string_view state, bool history) const {
        std::vector<std::string> texts;
        for (auto const& e : a_.findings) {
            if (e.state != state || e.how != "stated" || is_history(e) != history) continue;
            texts.push_back(state == "absent" ? e.label : recorded_words(e));
        }
        return texts;
    }

    static std::string recorded_words(Evidence const& e) {
        auto text = e.as_written.empty() ? e.label : e.as_written;
        if (!e.side.empty()) text += e.side == "both" ? ", both sides" : ", " + e.side;
        if (!e.grade.empty()) text += ", " + e.grade;
        return e.familial ? text + ", familial" : text;
    }

    void situation() {
        heading("SITUATION");
        auto const services = services_by_urgency(a_);
        if (services.empty()) {
            line("The rules suggest no referral on what was recorded.");
            auto const rest = if_normal_sentence(a_);
            if (!rest.empty()) line(rest);
            return;
        }
        line("Referral suggested. " + services);
        titled("Because", deciding());
    }

    /// What was seen; counting rules that were reached stand apart, in the assessment.
    std::vector<std::string> deciding() const {
        std::vector<std::string> texts;
        for (auto const& group : suggestion_groups(a_)) {
            for (auto const* reason : group.reasons) {
                auto seen = reason->evidence;
                std::erase_if(seen, [&](Evidence const& e) { return is_counting_rule(e); });
                auto text = evidence_list(seen);
                bool const known = std::find(texts.begin(), texts.end(), text) != texts.end();
                if (!text.empty() && !known) texts.push_back(std::move(text));
            }
        }
        return texts;
    }

    bool is_counting_rule(Evidence const& e) const {
        if (e.kind == Evidence::Kind::constellation) return true;
        return std::any_of(a_.constellations.begin(), a_.constellations.end(),
                           [&](ConstellationResult const& c) { return c.constellation == e.id; });
    }

    void background() {
        heading("BACKGROUND");
        for (auto const& [name, value] : context_.recorded) line(name + ": " + value);
        if (context_.recorded.empty()) line("Sex, gestation, age and dates: not recorded.");
        titled("History recorded", stated("present", true));
        titled("History asked and not present", stated("absent", true));
        if (context_.history_none) line("History: asked for, nothing recorded.");
    }

    void assessment() {
        heading("ASSESSMENT");
        auto const found = stated("present", false);
        if (found.empty()) line("Findings recorded as present: none.");
        titled("Recorded as present", found);
        titled("Recorded as absent", stated("absent", false));
        titled("Measured", measured());
        titled("Concluded by a rule from measures or other findings", derived());
        titled("What the rules said", rule_sentences());
        titled("Counting rules reached, to consider; a count is not a diagnosis", counted_rules());
        titled("Set aside", set_aside());
        titled("Not examined", open_steps());
    }

    std::vector<std::string> measured() const {
        std::vector<std::string> texts;
        for (auto const& m : a_.measures) texts.push_back(measure_words(m));
        return texts;
    }

    std::vector<std::string> derived() const {
        std::vector<std::string> texts;
        for (auto const& e : a_.findings) {
            if (e.state == "present" && e.how == "derived") texts.push_back(e.label);
        }
        return texts;
    }

    std::vector<std::string> rule_sentences() const {
        std::vector<std::string> texts;
        for (auto const& group : suggestion_groups(a_)) {
            for (auto const* reason : group.reasons) {
                texts.push_back(fmt::format("{} (rule {}; {})", reason->text, reason->rule,
                                            fmt::join(reason->sources, ", ")));
            }
        }
        return texts;
    }

    std::vector<std::string> counted_rules() const {
        std::vector<std::string> texts;
        for (auto const& c : a_.constellations) {
            if (c.reached != Truth::yes) continue;
            texts.push_back(fmt::format("{}: {} of {} ({})", c.label, c.low, c.possible,
                                        fmt::join(c.sources, ", ")));
        }
        return texts;
    }

    std::vector<std::string> set_aside() const {
        std::vector<std::string> texts;
        for (auto const& s : a_.set_aside) texts.push_back(s.label + ": " + s.why);
        return texts;
    }

    std::vector<std::string> open_steps() const {
        std::vector<std::string> essential, texts;
        for (auto const* step : open_essentials(a_)) essential.push_back(step->label);
        auto const others = a_.not_examined.steps.size() - essential.size();
        if (!essential.empty()) texts.push_back("essential: " + first_of(essential, 8));
        if (others > 0) texts.push_back(counted(others, "other step", "other steps"));
        for (auto const& e : a_.not_examined.unsure)
            texts.push_back("unsure: " + recorded_words(e));
        return texts;
    }

    void recommendation() {
        heading("RECOMMENDATION");
        auto const services = services_by_urgency(a_);
        line(services.empty() ? std::string("No referral by these rules.")
                              : "Please see: " + services);
        std::vector<std::string> first, later, cautions;
        for (auto const& [id, text] : a_.first_steps) first.push_back(text);
        for (auto const& f : a_.follow_up) later.push_back(due_words(f) + ": " + f.text);
        for (auto const& c : a_.cautions) cautions.push_back(c.text);
        titled("First steps that the rules name", first);
        titled("Follow-up", later);
        titled("Cautions", cautions);
    }

    Assessment const& a_;
    AssessmentContext const& context_;
    std::string out_;
};

}  // namespace

std::string consult_note(Assessment const& a, AssessmentContext const& context) {
    return ConsultWriter(a, context).write();
}

}  // namespace asterism
