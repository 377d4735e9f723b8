// SPDX-License-Identifier: MIT
#include "cases/from_arguments.h"

#include <algorithm>

#include "base/number.h"

namespace asterism {

namespace {

Word part(Word const& whole, std::size_t begin, std::size_t end) {
    auto const piece = std::string_view(whole.text).substr(begin, end - begin);
    auto const trimmed = trim(piece);
    auto const offset =
        trimmed.empty() ? begin : begin + static_cast<std::size_t>(trimmed.data() - piece.data());
    auto const at = whole.span.begin + static_cast<std::uint32_t>(offset);
    return {std::string(trimmed),
            {whole.span.source, at,
             at + static_cast<std::uint32_t>(std::max<std::size_t>(trimmed.size(), 1))}};
}

/// All arguments as one text, a line each, in the order in which they are laid out below.
class Lines {
public:
    explicit Lines(CaseArguments const& a) {
        for (auto const* list :
             {&a.findings, &a.absent, &a.unsure, &a.measures, &a.history, &a.examined}) {
            for (auto const& argument : *list) add(argument);
        }
        for (auto const* argument : {&a.id, &a.sex, &a.gestation, &a.age, &a.born, &a.examined_on})
            add(*argument);
        source_ = make_source("<arguments>", std::move(text_));
    }

    /// The next argument, as a word with its place.
    Word next() {
        auto const line = source_->line(++line_);
        auto const begin = source_->line_start(line_ - 1);
        return {std::string(line),
                {source_, begin, begin + static_cast<std::uint32_t>(line.size())}};
    }

private:
    void add(std::string const& argument) {
        auto line = argument;
        std::replace(line.begin(), line.end(), '\n', ' ');
        text_ += line + "\n";
    }

    std::string text_;
    SourcePtr source_;
    std::uint32_t line_ = 0;
};

/// `familial` and the sides need no key; anything else is a grade.
yaml::Entry qualifier(Word const& word) {
    static std::vector<std::string> const sides{"left", "right", "both", "bilateral"};
    if (word.text == "familial")
        return {{"familial", word.span}, yaml::scalar({"true", word.span})};
    bool const side = std::find(sides.begin(), sides.end(), word.text) != sides.end();
    return {{side ? "side" : "grade", word.span}, yaml::scalar(word)};
}

/// Adds a qualifier; a second, other one of its kind (`left; right`) makes a list, which the reader
/// of the case refuses, so that neither is dropped.
void add_qualifier(Word const& word, std::vector<yaml::Entry>& entries) {
    auto added = qualifier(word);
    auto const same = std::find_if(entries.begin(), entries.end(), [&](yaml::Entry const& entry) {
        return entry.key.text == added.key.text;
    });
    if (same == entries.end()) {
        entries.push_back(std::move(added));
    } else if (same->value.text != added.value.text) {
        same->value = yaml::list(word.span, {same->value, added.value});
    }
}

}  // namespace

std::vector<Word> split_words(Word const& whole, char separator) {
    std::vector<Word> parts;
    std::size_t begin = 0;
    while (true) {
        auto const end = std::min(whole.text.find(separator, begin), whole.text.size());
        parts.push_back(part(whole, begin, end));
        if (end == whole.text.size()) return parts;
        begin = end + 1;
    }
}

yaml::Node statement_from_text(Word const& argument) {
    auto const parts = split_words(argument, ';');
    if (parts.size() == 1) return yaml::scalar(parts.front());
    std::vector<yaml::Entry> entries{
        {{"finding", parts.front().span}, yaml::scalar(parts.front())}};
    for (std::size_t i = 1; i < parts.size(); ++i) {
        if (!parts[i].empty()) add_qualifier(parts[i], entries);
    }
    return yaml::map(argument.span, std::move(entries));
}

void examined_from_text(Word const& argument, std::vector<yaml::Node>& items) {
    for (auto const& name : split_words(argument, ',')) {
        auto const equals = name.text.find('=');
        bool const excepts = equals != std::string::npos && part(name, 0, equals).text == "except";
        if (!excepts) {
            items.push_back(yaml::scalar(name));
            continue;
        }
        auto const step = part(name, equals + 1, name.text.size());
        items.push_back(yaml::map(name.span, {{{"except", name.span}, yaml::scalar(step)}}));
    }
}

yaml::Entry measure_from_text(Word const& argument) {
    auto const equals = std::min(argument.text.find('='), argument.text.size());
    auto const name = part(argument, 0, equals);
    auto const value =
        part(argument, std::min(equals + 1, argument.text.size()), argument.text.size());
    return {name, yaml::scalar(value)};
}

namespace {

class Builder {
public:
    explicit Builder(CaseArguments const& arguments) : arguments_(arguments), lines_(arguments) {}

    yaml::Node build() {
        statements("findings", arguments_.findings.size());
        statements("absent", arguments_.absent.size());
        statements("unsure", arguments_.unsure.size());
        measures();
        history();
        examined();
        for (auto const* key : {"case", "sex", "gestation", "age", "born", "examined-on"})
            fact(key);
        return yaml::map({}, std::move(entries_));
    }

private:
    void add(std::string key, Span span, yaml::Node value) {
        entries_.push_back({{std::move(key), std::move(span)}, std::move(value)});
    }

    void statements(std::string key, std::size_t count) {
        std::vector<yaml::Node> items;
        for (std::size_t i = 0; i < count; ++i) items.push_back(statement_from_text(lines_.next()));
        if (count > 0)
            add(std::move(key), items.front().span, yaml::list(items.front().span, items));
    }

    void measures() {
        std::vector<yaml::Entry> values;
        for (std::size_t i = 0; i < arguments_.measures.size(); ++i)
            values.push_back(measure_from_text(lines_.next()));
        if (!values.empty())
            add("measures", values.front().key.span, yaml::map(values.front().key.span, values));
    }

    void history() {
        std::vector<yaml::Node> items;
        for (std::size_t i = 0; i < arguments_.history.size(); ++i)
            items.push_back(statement_from_text(lines_.next()));
        if (items.empty()) return;
        bool const none = items.size() == 1 && items.front().text == "none";
        add("history", items.front().span,
            none ? items.front() : yaml::list(items.front().span, items));
    }

    void examined() {
        std::vector<yaml::Node> items;
        for (std::size_t i = 0; i < arguments_.examined.size(); ++i)
            examined_from_text(lines_.next(), items);
        if (!items.empty())
            add("examined", items.front().span, yaml::list(items.front().span, items));
    }

    void fact(char const* key) {
        auto const word = lines_.next();
        if (!word.empty()) add(key, word.span, yaml::scalar(word));
    }

    CaseArguments const& arguments_;
    Lines lines_;
    std::vector<yaml::Entry> entries_;
};

}  // namespace

bool CaseArguments::empty() const {
    bool const no_lists = findings.empty() && absent.empty() && unsure.empty() &&
                          measures.empty() && history.empty() && examined.empty();
    return no_lists && id.empty() && sex.empty() && gestation.empty() && age.empty() &&
           born.empty() && examined_on.empty();
}

yaml::Node case_from_arguments(CaseArguments const& arguments) {
    return Builder(arguments).build();
}

}  // namespace asterism
