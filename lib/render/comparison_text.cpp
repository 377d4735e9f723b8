// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "render/assessment_words.h"
#include "render/comparison.h"
#include "render/escape.h"
#include "render/layout.h"

namespace asterism {

namespace {

class TextWriter {
public:
    TextWriter(BookComparison const& c, bool colour) : c_(c), style_(colour) {}

    std::string write() {
        line("earlier: " + book_words(c_.before));
        line("later:   " + book_words(c_.after));
        heading("What is written differently");
        if (c_.differences.empty()) out_ += "  nothing\n";
        for (auto const& difference : c_.differences) add(difference);
        heading("Which babies are judged differently");
        for (auto const& set : c_.sets) add(set);
        if (c_.sets.empty()) out_ += "  no babies were judged\n";
        return out_ + "\n" + wrapped(safety_text(), "", "");
    }

private:
    void line(std::string const& text, std::string_view rest = "         ") {
        out_ += wrapped(terminal_safe(text), "", rest);
    }

    void heading(std::string const& text) { out_ += "\n" + style_.bold(text) + "\n"; }

    void add(Difference const& difference) {
        if (difference.part != part_)
            out_ += "  " + style_.bold(part_words(difference.part)) + "\n";
        auto const thing = difference.part + " " + difference.id;
        if (thing != thing_) aspect_.clear();
        if (thing != thing_) {
            auto const label = difference.label.empty() ? "" : " (" + difference.label + ")";
            out_ += wrapped(terminal_safe(difference.id + label), "    ", "      ");
            out_ += "      " + style_.faint(terminal_safe(difference.place)) + "\n";
        }
        part_ = difference.part;
        thing_ = thing;
        change(difference);
    }

    void change(Difference const& d) {
        auto const aspect = terminal_safe(aspect_words(d));
        if (d.aspect.empty()) {
            auto const& whole = d.before.empty() ? d.after : d.before;
            out_ += wrapped(terminal_safe(whole), fmt::format("      {}: ", aspect), "        ");
            return;
        }
        if (aspect != aspect_) out_ += fmt::format("      {}\n", aspect);
        aspect_ = aspect;
        if (!d.before.empty()) out_ += wrapped(terminal_safe(d.before), "        - ", "          ");
        if (!d.after.empty()) out_ += wrapped(terminal_safe(d.after), "        + ", "          ");
    }

    void add(CaseSetComparison const& set) {
        out_ += "  " + style_.bold(terminal_safe(set_words(set))) + "\n";
        for (auto const& count : set.counts) {
            out_ += wrapped(terminal_safe(count_words(count)), "    ", "      ");
        }
        bool const all = set.origin != CaseSet::Origin::newborns;
        auto const shown = all ? set.changed.size() : std::min(set.changed.size(), newborns_shown);
        for (std::size_t i = 0; i < shown; ++i) add(set.changed[i]);
        if (shown < set.changed.size()) {
            out_ += fmt::format("    and {} more (--format json has them all)\n",
                                set.changed.size() - shown);
        }
    }

    void add(BabyChange const& baby) {
        auto const what = baby.story.empty() ? baby.findings : baby.story;
        out_ += wrapped(terminal_safe(baby.baby + ": " + what), "    * ", "      ");
        for (auto const& change : baby.changes) {
            out_ += wrapped(terminal_safe(change_words(change)), "        ", "          ");
        }
    }

    BookComparison const& c_;
    Style style_;
    std::string out_, part_, thing_, aspect_;
};

}  // namespace

std::string comparison_text(BookComparison const& comparison, bool colour) {
    return TextWriter(comparison, colour).write();
}

}  // namespace asterism
