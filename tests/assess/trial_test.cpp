// SPDX-License-Identifier: MIT
// A trial keeps its verdicts by what turns; the judge is `verdicts` over a circuit evaluated anew.
#include "assess/trial.h"

#include <random>

#include "support/real_book.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

using Change = std::vector<std::pair<NodeId, Truth>>;

bool same(std::vector<ServiceVerdict> const& a, std::vector<ServiceVerdict> const& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](auto const& x, auto const& y) {
        return x.verdict == y.verdict && x.urgency == y.urgency && x.open_urgency == y.open_urgency;
    });
}

/// Facts of a baby: most are as `usual`, a few in a hundred are anything.
std::vector<Truth> random_baby(std::mt19937& random, Truth usual) {
    std::vector<Truth> values(real_book().circuit.size(), Truth::no);
    for (auto const& fact : real_book().facts)
        values[fact.node] = random() % 100 < 3 ? static_cast<Truth>(random() % 3) : usual;
    real_book().circuit.evaluate(values);
    return values;
}

Change random_change(std::mt19937& random) {
    auto const& facts = real_book().facts;
    Change change;
    for (auto more = 1 + random() % 4; more > 0; --more)
        change.emplace_back(facts[random() % facts.size()].node, static_cast<Truth>(random() % 3));
    return change;
}

std::vector<Truth> evaluated(std::vector<Truth> values, Change const& change) {
    for (auto const& [node, value] : change) values[node] = value;
    real_book().circuit.evaluate(values);
    return values;
}

/// What a trial says in short agrees with its verdicts.
void check_short_answers(CaseTrial const& trial, std::vector<ServiceVerdict> const& at_start) {
    auto const now = trial.verdicts();
    std::vector<ServiceId> fresh, all;
    for (ServiceId service = 0; service < now.size(); ++service) {
        CHECK(trial.verdict(service) == now[service].verdict);
        bool const suggested = now[service].verdict == Verdict::suggested;
        if (suggested) all.push_back(service);
        if (suggested && at_start[service].verdict != Verdict::suggested) fresh.push_back(service);
    }
    CHECK(trial.newly_suggested() == fresh);
    CHECK(trial.suggested() == all);
}

/// How many of the random changes gave other verdicts than before; each is checked.
int check_changes(std::mt19937& random, std::vector<Truth> const& start) {
    auto const at_start = verdicts(real_book(), start);
    CaseTrial trial(real_book(), start);
    CHECK(same(trial.verdicts(), at_start));
    int told = 0;
    for (int turn = 0; turn < 40; ++turn) {
        auto const first = random_change(random);
        auto const second = random_change(random);
        trial.apply(first);
        auto const one = evaluated(start, first);
        CHECK(same(trial.verdicts(), verdicts(real_book(), one)));
        trial.apply(second);
        auto const expected = verdicts(real_book(), evaluated(one, second));
        CHECK(same(trial.verdicts(), expected));
        check_short_answers(trial, at_start);
        if (trial.nothing_turned()) CHECK(same(expected, at_start));
        told += !same(expected, at_start);
        trial.undo();
        CHECK(same(trial.verdicts(), at_start));
    }
    return told;
}

}  // namespace

TEST_CASE("a trial gives the verdicts of the whole circuit, and those of the start back") {
    std::mt19937 random(20260712);
    int told = 0;
    for (int baby = 0; baby < 60; ++baby)
        told += check_changes(random, random_baby(random, baby % 3 ? Truth::no : Truth::unknown));
    CHECK(told > 200);
}
