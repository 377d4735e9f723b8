// SPDX-License-Identifier: MIT
#include <iterator>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "yaml/limits.h"
#include "yaml/read.h"
#include "yaml/text_checks.h"
#include "yaml/tree_builder.h"

namespace asterism::yaml {

namespace {

/// An input iterator that tells how far the parser has read: the SAX interface gives no positions.
class Cursor {
public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = char const*;
    using reference = char const&;

    Cursor(char const* at, std::uint32_t* count) : at_(at), count_(count) {}
    reference operator*() const { return *at_; }
    Cursor& operator++() {
        ++at_;
        if (count_) ++*count_;
        return *this;
    }
    Cursor operator++(int) {
        auto const old = *this;
        ++*this;
        return old;
    }
    friend bool operator==(Cursor const& a, Cursor const& b) { return a.at_ == b.at_; }
    friend bool operator!=(Cursor const& a, Cursor const& b) { return a.at_ != b.at_; }

private:
    char const* at_;
    std::uint32_t* count_;
};

class Handler final : public nlohmann::json_sax<nlohmann::json> {
public:
    Handler(SourcePtr source, Diagnostics& diagnostics, std::uint32_t const& count)
        : source_(std::move(source)),
          diagnostics_(diagnostics),
          tree_(diagnostics),
          count_(count) {}

    bool null() override {
        return scalar_done([&](Span span) { tree_.null(std::move(span)); });
    }
    bool boolean(bool value) override { return word(value ? "true" : "false"); }
    bool number_integer(number_integer_t) override { return number(); }
    bool number_unsigned(number_unsigned_t) override { return number(); }
    bool number_float(number_float_t, string_t const&) override { return number(); }
    bool string(string_t& value) override {
        return scalar_done([&](Span span) { tree_.scalar({value, std::move(span)}, true); });
    }
    bool key(string_t& value) override { return string(value); }
    bool binary(binary_t&) override { return false; }
    bool start_object(std::size_t) override { return begin(Kind::map); }
    bool start_array(std::size_t) override { return begin(Kind::list); }
    bool end_object() override { return end(); }
    bool end_array() override { return end(); }

    bool parse_error(std::size_t position, std::string const&,
                     nlohmann::json::exception const& problem) override {
        auto const begin = static_cast<std::uint32_t>(position > 0 ? position - 1 : 0);
        std::string_view message = problem.what();
        // nlohmann puts its own code and position first; the place is ours to print.
        if (auto const colon = message.find(": "); colon != std::string_view::npos)
            message.remove_prefix(colon + 2);
        diagnostics_.error("json-syntax", {source_, begin, begin + 1},
                           fmt::format("JSON cannot be read: {}", message));
        return false;
    }

    std::optional<Node> take() { return tree_.take(); }

private:
    std::uint32_t token_begin() const {
        auto const at = source_->text().find_first_not_of(" \t\r\n,:[{]}", last_);
        return static_cast<std::uint32_t>(std::min(at, source_->text().size()));
    }

    template <class Make>
    bool scalar_done(Make make) {
        Span const span{source_, token_begin(), count_};
        last_ = count_;
        make(span);
        return true;
    }

    bool word(std::string text) {
        return scalar_done([&](Span span) {
            tree_.scalar({std::move(text), std::move(span)}, false);
        });
    }

    /// Numbers keep their text, so that 31.0 keeps its precision. The parser has read one byte too
    /// far.
    bool number() {
        auto const begin = token_begin();
        auto const end = std::min(source_->text().find_first_not_of("+-.0123456789eE", begin),
                                  source_->text().size());
        last_ = static_cast<std::uint32_t>(end);
        tree_.scalar(
            {std::string(source_->text().substr(begin, end - begin)), {source_, begin, last_}},
            false);
        return true;
    }

    bool begin(Kind kind) {
        Span const span{source_, count_ - 1, count_};
        last_ = count_;
        if (tree_.depth() >= most_depth) {
            diagnostics_.error("too-deep", span,
                               fmt::format("nested more than {} levels deep", most_depth));
            return false;
        }
        tree_.begin(kind, span);
        return true;
    }

    bool end() {
        last_ = count_;
        tree_.end(count_);
        return true;
    }

    SourcePtr source_;
    Diagnostics& diagnostics_;
    TreeBuilder tree_;
    std::uint32_t const& count_;
    std::uint32_t last_ = 0;
};

}  // namespace

std::optional<Node> read_json(SourcePtr const& source, Diagnostics& diagnostics) {
    if (!check_text(source, diagnostics)) return std::nullopt;
    auto const text = source->text();
    std::uint32_t count = 0;
    Handler handler(source, diagnostics, count);
    bool const fine = nlohmann::json::sax_parse(
        Cursor(text.data(), &count), Cursor(text.data() + text.size(), nullptr), &handler);
    return fine ? handler.take() : std::nullopt;
}

}  // namespace asterism::yaml
