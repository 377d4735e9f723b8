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
            services_.push_back(fmt::format("{{\"service\":{}", compact(service.id.text)));
    }

    void answer(std::string_view id, batch::Answers const& answers,
                std::string& out) const override {
        out += "{\"case\":";
        add_id(id, out);
        out += ",\"urgency\":";
        auto const highest = batch::highest_urgency(answers);
        out += highest ? urgencies[static_cast<std::size_t>(*highest)] : "null";
        out += ",\"referrals\":[";
        auto const first = out.size();
        for (std::size_t i = 0; i < answers.size(); ++i) {
            if (answers[i].verdict == Verdict::not_suggested) continue;
            if (out.size() != first) out += ',';
            out += services_[i];
            add_verdict(answers[i], out);
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

    static void add_verdict(batch::ServiceAnswer const& answer, std::string& out) {
        if (answer.verdict == Verdict::suggested) {
            out += ",\"verdict\":\"suggested\",\"urgency\":";
            out += urgencies[static_cast<std::size_t>(*answer.urgency)];
            if (answer.may_rise_to) {
                out += ",\"may_rise_to\":";
                out += urgencies[static_cast<std::size_t>(*answer.may_rise_to)];
            }
        } else {
            out += ",\"verdict\":\"unsettled\",\"if_rest_normal\":\"";
            out += to_text(*answer.if_rest_normal);
            out += '"';
        }
        out += '}';
    }

    static constexpr std::array<std::string_view, 4> urgencies{"\"routine\"", "\"urgent\"",
                                                               "\"same-day\"", "\"emergency\""};
    std::vector<std::string> services_;
};

}  // namespace

std::unique_ptr<batch::BatchWriter const> batch_line_writer(Rulebook const& book) {
    return std::make_unique<BatchLines>(book);
}

}  // namespace asterism
