// SPDX-License-Identifier: MIT
#include "render/batch_line.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "render/json.h"

namespace asterism {

namespace {

using Json = nlohmann::ordered_json;

std::string compact(Json const& document) {
    return document.dump(-1, ' ', false, Json::error_handler_t::replace);
}

/// Texts of ASCII letters, digits and marks other than `"` and `\` need no escapes.
bool plain(std::string_view text) {
    return std::all_of(text.begin(), text.end(),
                       [](char c) { return c >= 0x20 && c < 0x7f && c != '"' && c != '\\'; });
}

class BatchLines final : public batch::BatchWriter {
public:
    explicit BatchLines(Rulebook const& book) {
        for (auto const& service : book.services)
            add_verdicts(fmt::format("{{\"service\":{},\"verdict\":", compact(service.id.text)));
    }

    void answer(std::string_view id, batch::Answers const& answers,
                std::string& out) const override {
        out += "{\"case\":";
        add_id(id, out);
        out += ",\"urgency\":";
        auto const highest = batch::highest_urgency(answers);
        out += highest ? urgencies[static_cast<std::size_t>(*highest)] : "null";
        out += ",\"referrals\":[";
        auto verdict = verdicts_.begin();
        bool more = false;
        for (auto const& one : answers) {
            if (one.verdict != Verdict::not_suggested) {
                if (more) out += ',';
                out += verdict[kind_of(one)];
                more = true;
            }
            verdict += kinds;
        }
        out += "]}\n";
    }

    void explained(Assessment const& assessment, std::string& out) const override {
        out += compact(assessment_json(assessment));
        out += '\n';
    }

    std::string refused(std::string_view id, Diagnostics const& diagnostics,
                        std::vector<Evidence> const& red_flags) const override {
        Json record{{"case", id.empty() ? Json() : Json(id)}, {"problems", Json::array()}};
        for (auto const& problem : diagnostics.sorted()) {
            Json one{{"code", problem.code}, {"message", problem.message}};
            if (problem.span.known()) one["column"] = problem.span.position().column;
            if (!problem.help.empty()) one["help"] = problem.help;
            record["problems"].push_back(std::move(one));
        }
        for (auto const& flag : red_flags)
            record["recognised_red_flags"].push_back(evidence_json(flag));
        return compact(record);
    }

private:
    static void add_id(std::string_view id, std::string& out) {
        if (id.empty()) {
            out += "null";
        } else if (plain(id)) {
            out += '"';
            out += id;
            out += '"';
        } else {
            out += compact(Json(id));
        }
    }

    /// What can be said of a service: suggested with an urgency and what it may rise to (nothing
    /// or another urgency), and then unsettled with each verdict when the rest is normal.
    static constexpr std::ptrdiff_t rises = 5;
    static constexpr std::ptrdiff_t settled = 4 * rises;
    static constexpr std::ptrdiff_t kinds = settled + 3;

    static std::ptrdiff_t kind_of(batch::ServiceAnswer const& answer) {
        if (answer.verdict == Verdict::unsettled)
            return settled + static_cast<std::ptrdiff_t>(*answer.if_rest_normal);
        auto const rise =
            answer.may_rise_to ? static_cast<std::ptrdiff_t>(*answer.may_rise_to) + 1 : 0;
        return static_cast<std::ptrdiff_t>(*answer.urgency) * rises + rise;
    }

    void add_verdicts(std::string const& service) {
        for (auto const urgency : urgencies) {
            auto const suggested = fmt::format("{}\"suggested\",\"urgency\":{}", service, urgency);
            verdicts_.push_back(suggested + '}');
            for (auto const rise : urgencies)
                verdicts_.push_back(fmt::format("{},\"may_rise_to\":{}}}", suggested, rise));
        }
        for (auto const verdict : {Verdict::not_suggested, Verdict::unsettled, Verdict::suggested})
            verdicts_.push_back(fmt::format("{}\"unsettled\",\"if_rest_normal\":\"{}\"}}", service,
                                            to_text(verdict)));
    }

    static constexpr std::array<std::string_view, 4> urgencies{"\"routine\"", "\"urgent\"",
                                                               "\"same-day\"", "\"emergency\""};
    std::vector<std::string> verdicts_;  ///< by service, then kind
};

}  // namespace

std::unique_ptr<batch::BatchWriter const> batch_line_writer(Rulebook const& book) {
    return std::make_unique<BatchLines>(book);
}

}  // namespace asterism
