// SPDX-License-Identifier: MIT
#include "expectation.h"

#include <algorithm>
#include <sstream>

#include "testing.h"

namespace asterism::testing {

namespace {

Referral const& referral_to(Assessment const& answer, std::string const& service) {
    for (auto const& referral : answer.referrals) {
        if (referral.service == service) return referral;
    }
    FAIL("no such service: ", service);
    return answer.referrals.front();
}

void expect_nobody(Assessment const& answer) {
    for (auto const& referral : answer.referrals) {
        CAPTURE(referral.service);
        CHECK(referral.verdict != Verdict::suggested);
    }
}

void expect_one(Assessment const& answer, std::string word) {
    if (word == "nobody") return expect_nobody(answer);
    bool const refused = word.front() == '!' || word.front() == '~';
    auto const mark = refused ? word.front() : '\0';
    if (refused) word.erase(0, 1);
    auto const equals = word.find('=');
    auto const& found = referral_to(answer, word.substr(0, equals));
    CAPTURE(word);
    if (mark == '!') {
        CHECK(to_text(found.verdict) == "not-suggested");
    } else if (mark == '~') {
        CHECK(to_text(found.verdict) != "suggested");
    } else {
        CHECK(to_text(found.verdict) == "suggested");
    }
    if (equals == std::string::npos || !found.urgency) return;
    CHECK(to_text(*found.urgency) == word.substr(equals + 1));
}

}  // namespace

void expect(Assessment const& answer, std::string const& line) {
    std::istringstream words(line);
    for (std::string word; std::getline(words >> std::ws, word, ',');) expect_one(answer, word);
}

bool decided_by(Assessment const& answer, std::string const& service, std::string const& rule) {
    auto const& found = referral_to(answer, service);
    return found.verdict == Verdict::suggested &&
           std::any_of(found.reasons.begin(), found.reasons.end(),
                       [&](Reason const& reason) { return reason.rule == rule; });
}

std::string reason_texts(Assessment const& answer, std::string const& service) {
    std::string text;
    for (auto const& reason : referral_to(answer, service).reasons) text += reason.text + "\n";
    return text;
}

}  // namespace asterism::testing
