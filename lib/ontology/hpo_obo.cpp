// SPDX-License-Identifier: MIT
// The tags of the OBO flat file format 1.2 that carry ids and is-a relations; all others are
// passed over.
#include <algorithm>

#include <fmt/format.h>

#include "base/number.h"
#include "ontology/hpo_builder.h"

namespace asterism {

namespace {

class OboReader {
public:
    OboReader(SourcePtr const& source, HpoBuilder& builder, Diagnostics& diagnostics)
        : source_(source), builder_(builder), diagnostics_(diagnostics) {}

    void read() {
        std::uint32_t number = 1;
        for (std::size_t begin = 0; begin < source_->text().size(); ++number) {
            line(source_->line(number), static_cast<std::uint32_t>(begin));
            begin = source_->line_start(number);
        }
        finish_term();
        if (!has_header_)
            diagnostics_.error("not-hpo", {source_, 0, 0},
                               "the file is neither OBO Graphs JSON nor OBO text",
                               "expected an unaltered hp.json or hp.obo");
    }

private:
    void line(std::string_view text, std::uint32_t begin) {
        Span const span{source_, begin, begin + static_cast<std::uint32_t>(text.size())};
        if (text.starts_with('[')) return start(text, span);
        auto const colon = text.find(": ");
        if (colon == std::string_view::npos) return;
        auto const tag = text.substr(0, colon);
        auto const value = trim(text.substr(colon + 2));
        if (tag == "format-version") has_header_ = true;
        if (tag == "data-version") builder_.version(value);
        if (in_term_) term_tag(tag, value, span);
    }

    void start(std::string_view text, Span const& span) {
        finish_term();
        in_term_ = text.starts_with("[Term]");
        place_ = span;
    }

    void term_tag(std::string_view tag, std::string_view value, Span const& span) {
        auto const id = hpo_id(value.substr(0, value.find_first_of(" \t{!")));
        if (tag == "id") {
            id_ = id;
            foreign_ = id.empty();
            place_ = span;
        }
        if (tag == "name") label_ = std::string(value);
        if (tag == "is_obsolete") obsolete_ = value.starts_with("true");
        if (tag == "alt_id") alternates_.push_back(id);
        if (tag == "replaced_by") replaced_by_ = id;
        if (tag == "is_a") parents_.emplace_back(id, span);
    }

    void finish_term() {
        if (in_term_ && id_.empty() && !foreign_)
            diagnostics_.error("hpo-no-id", place_, "a term without an `id:` line");
        if (in_term_ && !id_.empty()) {
            builder_.term(id_, label_, obsolete_, place_);
            for (auto const& old_id : alternates_) builder_.replacement(old_id, id_);
            if (!replaced_by_.empty()) builder_.replacement(id_, replaced_by_);
            for (auto const& [parent, span] : parents_) builder_.is_a(id_, parent, span);
        }
        id_ = label_ = replaced_by_ = {};
        alternates_ = {};
        parents_ = {};
        in_term_ = obsolete_ = foreign_ = false;
    }

    SourcePtr const& source_;
    HpoBuilder& builder_;
    Diagnostics& diagnostics_;
    bool has_header_ = false, in_term_ = false, obsolete_ = false, foreign_ = false;
    Span place_;
    std::string id_, label_, replaced_by_;
    std::vector<std::string> alternates_;
    std::vector<std::pair<std::string, Span>> parents_;
};

}  // namespace

void read_hpo_obo(SourcePtr const& source, HpoBuilder& builder, Diagnostics& diagnostics) {
    OboReader(source, builder, diagnostics).read();
}

}  // namespace asterism
