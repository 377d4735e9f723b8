// SPDX-License-Identifier: MIT
#include <sstream>

#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include "yaml/limits.h"
#include "yaml/read.h"
#include "yaml/text_checks.h"
#include "yaml/tree_builder.h"

namespace asterism::yaml {

namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

/// Ends the parse; the diagnostic has been recorded already.
struct Stop {};

bool is_quote(char c) { return c == '"' || c == '\''; }

/// Just past the quote that closes the one at `open`; nothing when the text ends before.
std::optional<std::size_t> quote_end(std::string_view text, std::size_t open) {
    char const quote = text[open];
    for (auto at = open + 1; at < text.size(); ++at) {
        if (quote == '"' && text[at] == '\\') {
            ++at;
        } else if (text[at] == quote) {
            bool const doubled = quote == '\'' && at + 1 < text.size() && text[at + 1] == quote;
            if (!doubled) return at + 1;
            ++at;
        }
    }
    return std::nullopt;
}

/// Turns yaml-cpp's events into tree events with our own spans. Marks count lines and bytes from 0.
class Events final : public YAML::EventHandler {
public:
    Events(SourcePtr source, Diagnostics& diagnostics)
        : source_(std::move(source)), diagnostics_(diagnostics), tree_(diagnostics) {}

    void OnDocumentStart(YAML::Mark const& mark) override {
        if (++documents_ == 2)
            fail("second-document", at(mark), "a second document starts here",
                 "keep one document a file");
    }
    void OnDocumentEnd() override {}
    void OnNull(YAML::Mark const& mark, YAML::anchor_t anchor) override {
        refuse_anchor(mark, anchor);
        tree_.null(at(mark));
    }
    void OnAlias(YAML::Mark const& mark, YAML::anchor_t) override {
        diagnostics_.error("yaml-alias", at(mark), "aliases (`*name`) are not accepted",
                           "write the value out");
        tree_.null(at(mark));
    }
    void OnScalar(YAML::Mark const& mark, std::string const& tag, YAML::anchor_t anchor,
                  std::string const& value) override {
        refuse_anchor(mark, anchor);
        refuse_tag(mark, tag);
        auto span = at(mark);
        bool const quoted = tag == "!";
        if (quoted) refuse_open_quote(span);
        span.end = scalar_end(span.begin, value, quoted);
        last_ = span.end;
        tree_.scalar({value, span}, quoted);
    }
    void OnSequenceStart(YAML::Mark const& mark, std::string const& tag, YAML::anchor_t anchor,
                         YAML::EmitterStyle::value) override {
        begin(Kind::list, mark, tag, anchor);
    }
    void OnSequenceEnd() override { tree_.end(last_); }
    void OnMapStart(YAML::Mark const& mark, std::string const& tag, YAML::anchor_t anchor,
                    YAML::EmitterStyle::value) override {
        begin(Kind::map, mark, tag, anchor);
    }
    void OnMapEnd() override { tree_.end(last_); }

    Span at(YAML::Mark const& mark) const {
        auto begin = source_->line_start(static_cast<std::uint32_t>(std::max(0, mark.line))) +
                     static_cast<std::uint32_t>(std::max(0, mark.column));
        if (mark.line == 0 && source_->text().substr(0, 3) == byte_order_mark) begin += 3;
        begin = std::min(begin, static_cast<std::uint32_t>(source_->text().size()));
        return {source_, begin, begin + 1};
    }
    std::optional<Node> take() { return tree_.take(); }

private:
    void begin(Kind kind, YAML::Mark const& mark, std::string const& tag, YAML::anchor_t anchor) {
        refuse_anchor(mark, anchor);
        refuse_tag(mark, tag);
        if (tree_.depth() >= most_depth) {
            fail("too-deep", at(mark), fmt::format("nested more than {} levels deep", most_depth),
                 {});
        }
        last_ = std::max(last_, at(mark).begin);
        tree_.begin(kind, at(mark));
    }

    [[noreturn]] void fail(std::string_view code, Span span, std::string message,
                           std::string help) {
        diagnostics_.error(code, std::move(span), std::move(message), std::move(help));
        throw Stop{};
    }

    void refuse_anchor(YAML::Mark const& mark, YAML::anchor_t anchor) {
        if (anchor != YAML::NullAnchor) {
            diagnostics_.error("yaml-anchor", at(mark), "anchors (`&name`) are not accepted",
                               "write the value out");
        }
    }

    void refuse_tag(YAML::Mark const& mark, std::string const& tag) {
        if (!tag.empty() && tag != "?" && tag != "!") {
            diagnostics_.error("yaml-tag", at(mark),
                               fmt::format("the tag `{}` is not accepted", tag), "remove the tag");
        }
    }

    /// yaml-cpp takes the end of a file that ends in a line break for a closing quote.
    void refuse_open_quote(Span const& span) {
        auto const text = source_->text();
        bool const open =
            span.begin < text.size() && is_quote(text[span.begin]) && !quote_end(text, span.begin);
        if (open)
            fail("yaml-syntax", span, "YAML cannot be read: this quote is never closed",
                 "close the quote");
    }

    /// Where the scalar ends in the file; for text that is folded, its first line.
    std::uint32_t scalar_end(std::uint32_t begin, std::string const& value, bool quoted) const {
        auto const text = source_->text();
        auto end = std::min(text.find('\n', begin), text.size());
        if (quoted && begin < text.size() && is_quote(text[begin])) {
            end = quote_end(text, begin).value_or(end);
        } else if (text.substr(begin, value.size()) == value) {
            end = begin + value.size();
        }
        return static_cast<std::uint32_t>(std::max<std::size_t>(end, begin + 1));
    }

    SourcePtr source_;
    Diagnostics& diagnostics_;
    TreeBuilder tree_;
    int documents_ = 0;
    std::uint32_t last_ = 0;
};

}  // namespace

std::optional<Node> read_yaml(SourcePtr const& source, Diagnostics& diagnostics) {
    if (!check_text(source, diagnostics)) return std::nullopt;
    auto const text = source->text();
    std::istringstream stream{
        std::string(text.substr(0, 3) == byte_order_mark ? text.substr(3) : text)};
    Events events(source, diagnostics);
    try {
        YAML::Parser parser(stream);
        if (!parser.HandleNextDocument(events)) {
            diagnostics.error("empty-file", {source, 0, 1},
                              "the file holds no value, only comments");
            return std::nullopt;
        }
        parser.HandleNextDocument(events);
    } catch (Stop const&) {
        return std::nullopt;
    } catch (YAML::Exception const& problem) {
        diagnostics.error("yaml-syntax", events.at(problem.mark),
                          fmt::format("YAML cannot be read: {}", problem.msg));
        return std::nullopt;
    }
    return events.take();
}

std::optional<Node> read_any(SourcePtr const& source, Diagnostics& diagnostics) {
    auto const text = source->text();
    auto const first = text.find_first_not_of(" \t\r\n");
    bool const braces =
        first != std::string_view::npos && (text[first] == '{' || text[first] == '[');
    auto const& name = source->name();
    auto const ends_in = [&](std::string_view end) {
        return name.size() >= end.size() && name.ends_with(end);
    };
    bool const json = braces && !ends_in(".yaml") && !ends_in(".yml");
    return json ? read_json(source, diagnostics) : read_yaml(source, diagnostics);
}

}  // namespace asterism::yaml
