// SPDX-License-Identifier: MIT
// The registry's list of minor anomalies against the book's classes: what agrees, and where the
// book differs on purpose. Agreement means that the book has a minor variant too. A class that
// changes fails here until the change is recorded in registry_list.cpp with its reason.
#include <map>
#include <set>
#include <string>

#include <fmt/format.h>

#include "assess/assess.h"
#include "registry_list.h"
#include "shipped_book.h"
#include "testing.h"

using namespace asterism;
using namespace asterism::testing;

namespace {

constexpr std::size_t least_rows = 80;

/// The reason that the book itself gives for a finding's class.
std::string because(FindingId id) {
    auto const& book = shipped_book();
    return book.classes[id] ? book.book->classes[book.classes[id]->syntax].because : "";
}

std::string row(RegistryItem const& item) {
    return fmt::format("{:<8} {:<38} {:<32} {}\n", item.region, item.item, item.finding,
                       class_text(finding(item.finding)));
}

}  // namespace

TEST_CASE("each listed item is classed as recorded, and each difference has its reason") {
    for (auto const& item : registry_list()) {
        std::string const name = item.finding;
        CAPTURE(name);
        auto const id = finding(name);
        CHECK(class_text(id) == to_text(item.our_class));
        bool const differs = item.our_class != FindingClass::minor_variant;
        CHECK(differs == !std::string(item.difference).empty());
        CHECK_FALSE(because(id).empty());
    }
}

TEST_CASE("the table is long enough and names each finding once") {
    std::set<std::string> findings;
    for (auto const& item : registry_list()) findings.insert(item.finding);
    CHECK(registry_list().size() >= least_rows);
    CHECK(findings.size() == registry_list().size());
}

TEST_CASE("agreements and deliberate differences are printed") {
    std::map<std::string, int> counts;
    std::string agree, differ;
    for (auto const& item : registry_list()) {
        ++counts[class_text(finding(item.finding))];
        if (item.our_class == FindingClass::minor_variant) {
            agree += row(item);
            continue;
        }
        differ += row(item);
        differ += fmt::format("         on purpose: {}\n         the book: {}\n", item.difference,
                              because(finding(item.finding)));
    }
    fmt::print("\nregistry-minor (membership from memory) and minor variant here\n{}", agree);
    fmt::print("\nregistry-minor and classed otherwise here\n{}\n{} items:", differ,
               registry_list().size());
    for (auto const& [name, count] : counts) fmt::print(" {} {},", count, name);
    fmt::print(" agreement {:.0f} %\n",
               100.0 * counts["minor-variant"] / static_cast<double>(registry_list().size()));
    CHECK(counts["none"] == 0);
    CHECK(counts["minor-variant"] > counts["major-anomaly"] + counts["red-flag"]);
}

TEST_CASE("what the registry lets go but the bedside must not, still refers somewhere") {
    // A registry-minor that the book calls a red flag is one because a service must see it.
    struct Route {
        char const* finding;
        char const* service;
    };
    auto const& book = shipped_book();
    for (auto const& [name, service] :
         {Route{"micropenis", "endocrinology"}, Route{"bilateral-impalpable-testes", "urology"},
          Route{"clitoromegaly", "endocrinology"}, Route{"atypical-sacral-dimple", "neurosurgery"},
          Route{"heart-murmur", "cardiology"}}) {
        CAPTURE(name);
        auto const baby = case_from(fmt::format("examined: all\nfindings: [{}]\n", name));
        auto const answer = assess(book, baby);
        bool suggested = false;
        for (auto const& referral : answer.referrals) {
            suggested = suggested ||
                        (referral.service == service && referral.verdict == Verdict::suggested);
        }
        CHECK(suggested);
    }
}
