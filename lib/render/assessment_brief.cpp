// SPDX-License-Identifier: MIT
#include "render/assessment_brief.h"

#include <algorithm>

#include <fmt/format.h>

#include "render/assessment_text.h"
#include "render/assessment_view.h"
#include "render/assessment_words.h"
#include "render/escape.h"
#include "render/layout_blocks.h"

namespace asterism {

namespace {

constexpr std::size_t label_width = 15;

/// Which blocks get room first. The services stand before all others.
enum Rank {
    services = 0,
    first_steps,
    not_examined,
    cautions,
    follow_up,
    set_aside,
    change,
    why_not,
    consider,
    measures
};

class BriefText {
public:
    BriefText(Assessment const& a, Style const& style) : a_(a), style_(style) {}

    std::string write() {
        opening();
        suggestions();
        reasons_against();
        what_would_change();
        labelled("Set aside", "set aside", set_aside, joined(set_aside_words()));
        labelled("To consider", "patterns", consider, constellation_words());
        labelled("Measures", "measures", measures, joined(measure_list()));
        labelled("Not examined", "not examined", not_examined, open_words());
        labelled("First steps", "first steps", first_steps, first_step_words());
        labelled("Follow-up", "follow-up", follow_up, follow_up_words());
        labelled("Cautions", "cautions", cautions, caution_words());
        auto const footer = closing();
        auto const taken = lines_in(out_) + lines_in(footer);
        open_the_gap();
        fit(blocks_, brief_lines - taken);
        return out_ + page_of(blocks_, style_) + footer;
    }

private:
    static int lines_in(std::string const& text) {
        return static_cast<int>(std::count(text.begin(), text.end(), '\n'));
    }

    static Lines item(std::string const& text, std::string_view first, std::string_view rest,
                      std::size_t most) {
        return clipped(wrapped_lines(terminal_safe(text), first, rest), most);
    }

    void add_to_opening(std::string const& text, std::size_t most) {
        if (text.empty()) return;
        for (auto const& line : item(text, "", "", most)) out_ += line + "\n";
    }

    void opening() {
        auto const first = headline(a_, page_width);
        for (auto const& line : item(first, "", "", 3)) {
            bool const now = a_.urgency == Urgency::emergency;
            out_ += (now ? style_.alarm(line) : style_.bold(line)) + "\n";
        }
        if (!names_every_service(first)) add_to_opening("All: " + services_by_urgency(a_), 3);
        add_to_opening(if_normal_sentence(a_), 3);
        for (auto const& sentence : rise_sentences(a_)) {
            add_to_opening(sentence, 2);
            break;  // the most urgent one; the others stand in the full text
        }
    }

    bool names_every_service(std::string const& text) const {
        auto const all = with_verdict(a_, Verdict::suggested);
        return std::all_of(all.begin(), all.end(), [&](Referral const* r) {
            return text.find(r->label) != std::string::npos;
        });
    }

    /// Few services get a heading and room for sentences; many get two lines each.
    void suggestions() {
        auto const groups = suggestion_groups(a_);
        for (auto const& group : groups) {
            blocks_.push_back(groups.size() > 4 ? short_suggestion(group) : suggestion(group));
        }
    }

    static Block suggestion(SuggestionGroup const& group) {
        auto const heading = terminal_safe(heading_of(group));
        Block block{heading, shortened(heading, page_width), {}, services, true};
        for (auto const* reason : group.reasons) {
            block.items.push_back(item(reason_words(*reason), "  - ", "    ", 5));
        }
        if (group.reasons.empty()) {
            block.items.push_back(item(repeated_words(group), "  - ", "    ", 2));
        }
        return block;
    }

    static Block short_suggestion(SuggestionGroup const& group) {
        auto const heading = heading_of(group);
        Block block{terminal_safe(heading), "", {}, services};
        auto text = repeated_words(group);
        if (!group.reasons.empty()) {
            auto const& reason = *group.reasons.front();
            text = fmt::format("{}. {}", evidence_list(reason.evidence, 3), reason.text);
        }
        block.items.push_back(item(heading + " - " + text, "* ", "  ", 2));
        return block;
    }

    static std::string reason_words(Reason const& reason) {
        auto const seen = evidence_list(reason.evidence, 5);
        return fmt::format("{} Seen: {}. [{}]", reason.text, seen.empty() ? "see rule" : seen,
                           reason.rule);
    }

    static std::string repeated_words(SuggestionGroup const& group) {
        std::vector<std::string> rules;
        for (auto const* reason : group.repeated) rules.push_back(reason->rule);
        return "As above: " + first_of(rules, 3);
    }

    /// With a suggestion on the page, why others are not suggested can wait for the full text.
    void reasons_against() {
        if (suggestion_groups(a_).empty()) {
            labelled("Why not", "why not", why_not, nearest_sentences(a_));
        }
    }

    void what_would_change() {
        Block block{"what would change", "What would change this:", {}, change};
        for (auto const& sentence : change_sentences(a_, false)) {
            block.items.push_back(item(sentence, "  - ", "    ", 3));
        }
        if (!block.items.empty()) blocks_.push_back(std::move(block));
    }

    void labelled(std::string_view label, std::string name, Rank rank,
                  std::vector<std::string> const& texts) {
        Block block{std::move(name), "", {}, rank, false};
        for (auto const& text : texts) {
            auto const first = fmt::format("{:<{}}", block.items.empty() ? label : "", label_width);
            block.items.push_back(item(text, first, std::string(label_width, ' '), 3));
        }
        if (!block.items.empty()) blocks_.push_back(std::move(block));
    }

    /// A blank line between the services and what follows.
    void open_the_gap() {
        auto const first = std::find_if(blocks_.begin(), blocks_.end(),
                                        [](Block const& b) { return b.rank != services; });
        if (first != blocks_.end()) first->gap = true;
    }

    /// Findings set aside for the same reason stand together.
    std::vector<std::string> set_aside_words() const {
        std::vector<std::pair<std::string, std::vector<std::string>>> by_reason;
        for (auto const& s : a_.set_aside) {
            auto const known =
                std::find_if(by_reason.begin(), by_reason.end(),
                             [&](auto const& entry) { return entry.first == s.why; });
            if (known == by_reason.end())
                by_reason.push_back({s.why, {s.label}});
            else
                known->second.push_back(s.label);
        }
        std::vector<std::string> words;
        for (auto const& [why, labels] : by_reason) {
            words.push_back(fmt::format("{}: {}", first_of(labels, 4), why));
        }
        return words;
    }

    std::vector<std::string> constellation_words() const {
        std::vector<std::string> words;
        for (auto const& c : a_.constellations) {
            if (c.reached != Truth::yes) continue;
            words.push_back(fmt::format("{}: {}, {} of {} ({})", c.service, c.label, c.low,
                                        c.possible, fmt::join(c.sources, ", ")));
        }
        return words;
    }

    std::vector<std::string> measure_list() const {
        std::vector<std::string> words;
        for (auto const& m : a_.measures) words.push_back(measure_in_short(m));
        return words;
    }

    std::vector<std::string> open_words() const {
        std::vector<std::string> essential, unsure, words;
        for (auto const* step : open_essentials(a_)) essential.push_back(step->label);
        for (auto const& e : a_.not_examined.unsure) unsure.push_back(e.label);
        auto const others = a_.not_examined.steps.size() - essential.size();
        if (!essential.empty()) words.push_back("essential: " + first_of(essential, 4));
        if (!unsure.empty()) words.push_back("unsure: " + first_of(unsure, 4));
        if (others > 0) {
            words.push_back(words.empty() ? counted(others, "step", "steps")
                                          : "and " + counted(others, "other step", "other steps"));
        }
        words = joined(words);
        auto const& history = a_.not_examined.history;
        if (!history.empty()) words.push_back("ask, it could matter: " + first_of(history, 2));
        return words;
    }

    /// Short texts as one item, which is cut at its end where they are many.
    static std::vector<std::string> joined(std::vector<std::string> const& texts) {
        if (texts.empty()) return {};
        return {fmt::format("{}", fmt::join(texts, "; "))};
    }

    std::vector<std::string> first_step_words() const {
        std::vector<std::string> words;
        for (auto const& [id, text] : a_.first_steps) words.push_back(text);
        return words;
    }

    std::vector<std::string> follow_up_words() const {
        std::vector<std::string> words;
        for (auto const& f : a_.follow_up) words.push_back(due_words(f) + ": " + f.text);
        return words;
    }

    std::vector<std::string> caution_words() const {
        std::vector<std::string> words;
        for (auto const& c : a_.cautions) words.push_back(c.text);
        return words;
    }

    std::string closing() const {
        auto out = "\n" + wrapped(safety_text(), "", "");
        auto const from = shortened(terminal_safe(provenance_words(a_)), page_width);
        return out + style_.faint(from) + "\n";
    }

    Assessment const& a_;
    Style const& style_;
    std::string out_;
    std::vector<Block> blocks_;
};

}  // namespace

std::string brief_text(Assessment const& assessment, Style const& style) {
    return BriefText(assessment, style).write();
}

}  // namespace asterism
