// SPDX-License-Identifier: MIT
#include "audit/decisions.h"

#include <algorithm>
#include <array>
#include <cstring>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "audit/line_parts.h"
#include "base/nearest.h"
#include "base/number.h"
#include "batch/csv_rows.h"
#include "yaml/read.h"

namespace asterism::audit {

namespace {

constexpr std::array<std::string_view, 4> keys{"case", "service", "referred", "at"};
enum Key : std::size_t { case_key, service_key, referred_key, at_key };

std::string accepted(std::string_view typed, std::vector<std::string> const& known,
                     std::string_view what) {
    auto const help = did_you_mean(typed, known);
    return help.empty() ? fmt::format("accepted {}: {}", what, fmt::join(known, ", ")) : help;
}

}  // namespace

CaseDecisions const* DecisionFile::find(std::string_view id) const {
    auto const found = all_.find(id);
    return found == all_.end() ? nullptr : &found->second;
}

/// Fills a DecisionFile row by row.
class DecisionReader {
public:
    DecisionReader(std::string name, std::string text, Services const& services,
                   Diagnostics& diagnostics)
        : source_(make_source(std::move(name), std::move(text))),
          services_(services),
          diagnostics_(diagnostics) {}

    DecisionFile csv() {
        auto const text = source_->text();
        std::size_t at = 0;
        batch::CsvRows rows([&](char* to, std::size_t size) -> std::optional<std::size_t> {
            auto const bytes = std::min(size, text.size() - at);
            std::memcpy(to, text.data() + at, bytes);
            at += bytes;
            return bytes;
        });
        batch::CsvRow row;
        if (!rows.next(row)) {
            diagnostics_.error("bad-csv", place(1, ""), "the file of decisions is empty");
        } else if (header(row)) {
            while (rows.next(row)) csv_row(row);
        }
        return std::move(file_);
    }

    DecisionFile json_lines() {
        auto text = source_->text();
        std::vector<LineMember> members;
        for (line_ = 1; !text.empty(); ++line_) {
            auto const end = std::min(text.find('\n'), text.size());
            auto const line = text.substr(0, end);
            text.remove_prefix(std::min(end + 1, text.size()));
            if (line.find_first_not_of(" \t\r") != std::string_view::npos) json_row(line, members);
        }
        return std::move(file_);
    }

private:
    struct Row {
        std::array<std::string, 4> values;
    };

    /// Where a text stands in a line of the file; the line's start when it is not found there.
    Span place(std::uint64_t line, std::string_view text) const {
        auto const number = static_cast<std::uint32_t>(line);
        auto const start = source_->line_start(number - 1);
        auto const found = text.empty() ? std::string_view::npos : source_->line(number).find(text);
        auto const begin =
            start + (found == std::string_view::npos ? 0 : static_cast<std::uint32_t>(found));
        auto const length = found == std::string_view::npos ? 0 : text.size();
        return {source_, begin, begin + static_cast<std::uint32_t>(length)};
    }

    void error(std::string_view code, std::string_view at, std::string message,
               std::string help = {}) {
        diagnostics_.error(code, place(line_, at), std::move(message), std::move(help));
    }

    bool key_of(std::string_view name, std::size_t& key) {
        if (name == "on") name = keys[at_key];
        auto const found = std::find(keys.begin(), keys.end(), name);
        if (found != keys.end()) {
            key = static_cast<std::size_t>(found - keys.begin());
            return true;
        }
        error("unknown-column", name, fmt::format("unknown column `{}`", name),
              accepted(name, {keys.begin(), keys.end()}, "columns"));
        return false;
    }

    bool header(batch::CsvRow const& row) {
        bool fine = row.problem.empty();
        if (!fine) error("bad-csv", "", fmt::format("the header cannot be read: {}", row.problem));
        for (auto const& cell : row.cells) {
            std::size_t key = keys.size();
            fine = key_of(trim(cell), key) && fine;
            if (std::count(columns_.begin(), columns_.end(), key) > 0) {
                error("unknown-column", cell, fmt::format("column `{}` is named twice", cell));
                fine = false;
            }
            columns_.push_back(key);
        }
        for (auto const key : {case_key, service_key, referred_key}) {
            if (!fine || std::count(columns_.begin(), columns_.end(), key) > 0) continue;
            error("missing-column", "", fmt::format("the column `{}` is missing", keys[key]));
            fine = false;
        }
        return fine;
    }

    void csv_row(batch::CsvRow const& row) {
        line_ = row.line;
        if (!row.problem.empty()) return error("bad-csv", "", row.problem);
        if (row.cells.size() != columns_.size())
            return error("bad-csv", "",
                         fmt::format("expected {} cells as in the header, found {}",
                                     columns_.size(), row.cells.size()));
        Row values;
        for (std::size_t i = 0; i < columns_.size(); ++i)
            values.values[columns_[i]] = trim(row.cells[i]);
        take(values);
    }

    void json_row(std::string_view line, std::vector<LineMember>& members) {
        if (!split_line(line, members))
            return error("bad-json", "", "expected a JSON object with case, service and referred");
        Row row;
        std::array<bool, 4> seen{};
        for (auto const& member : members) {
            std::size_t key = 0;
            if (!key_of(member.key, key)) return;
            if (seen[key])
                return error("duplicate-key", member.key,
                             fmt::format("the key `{}` stands twice", member.key));
            seen[key] = true;
            bool const flag = key == referred_key && !member.is_text();
            if (flag) row.values[key] = member.value;
            if (!flag && !plain_text(member, row.values[key]))
                return error("bad-value", member.value,
                             fmt::format("expected a text under `{}`, found `{}`", member.key,
                                         member.value));
        }
        take(row);
    }

    void take(Row const& row) {
        ++file_.rows_;
        auto const& [id, service, referred, at] = row.values;
        if (id.empty()) return error("missing-case", "", "a decision without a case");
        auto& baby = file_.all_[id];
        if (baby.line == 0) baby.line = line_;
        if (service == "none") return no_service(baby, referred, id);
        DecidedService decided;
        bool const known = service_of(service, decided.service);
        bool const said = yes_or_no(referred, decided.referred);
        bool const dated = at.empty() || day(at, decided);
        if (known && said && dated) add(baby, decided, id);
    }

    void no_service(CaseDecisions& baby, std::string const& referred, std::string const& id) {
        bool yes = false;
        if (!referred.empty() && !yes_or_no(referred, yes)) return;
        if (yes) return error("bad-value", referred, "nobody can be referred to `none`");
        baby.complete = true;
        contradicts(baby, id);
    }

    void contradicts(CaseDecisions const& baby, std::string const& id) {
        auto const& all = baby.services;
        bool const any =
            std::any_of(all.begin(), all.end(), [](auto const& d) { return d.referred; });
        if (baby.complete && any)
            error("contradiction", id,
                  fmt::format("case `{}` is referred to a service and to `none`", id));
    }

    bool service_of(std::string const& name, std::size_t& place) {
        if (auto const found = services_.find(name)) return place = *found, true;
        if (name.empty())
            return error("missing-service", "", "a decision without a service"), false;
        error("unknown-service", name, fmt::format("unknown service `{}`", name),
              accepted(name, services_.ids(), "services"));
        return false;
    }

    bool yes_or_no(std::string const& text, bool& yes) {
        yes = text == "yes" || text == "true";
        if (yes || text == "no" || text == "false") return true;
        error("bad-value", text,
              fmt::format("expected yes or no under `referred`, found `{}`", text));
        return false;
    }

    bool day(std::string const& text, DecidedService& decided) {
        constexpr std::size_t length = 10;
        bool const timed = text.size() > length && (text[length] == 'T' || text[length] == ' ');
        auto const date = parse_date(timed ? text.substr(0, length) : text);
        if (date) decided.on = *date;
        if (!date) error("bad-date", text, date.error());
        return date.has_value();
    }

    void add(CaseDecisions& baby, DecidedService const& decided, std::string const& id) {
        for (auto const& other : baby.services) {
            if (other.service != decided.service) continue;
            Diagnostic twice;
            twice.code = "duplicate-decision";
            twice.message = fmt::format("`{}` is decided twice for case `{}`",
                                        services_.ids()[decided.service], id);
            twice.span = place(line_, id);
            twice.related.push_back({place(baby.line, id), "the case's first decision is here"});
            diagnostics_.add(std::move(twice));
            return;
        }
        baby.services.push_back(decided);
        contradicts(baby, id);
    }

    SourcePtr source_;
    Services const& services_;
    Diagnostics& diagnostics_;
    DecisionFile file_;
    std::vector<std::size_t> columns_;
    std::uint64_t line_ = 1;
};

DecisionFile read_decisions(std::string name, std::string text, DecisionFormat format,
                            Services const& services, Diagnostics& diagnostics) {
    DecisionReader reader(std::move(name), std::move(text), services, diagnostics);
    return format == DecisionFormat::csv ? reader.csv() : reader.json_lines();
}

}  // namespace asterism::audit
