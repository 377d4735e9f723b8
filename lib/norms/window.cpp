// SPDX-License-Identifier: MIT
#include "norms/window.h"

namespace asterism::norms {
namespace {

using std::chrono::hours;

std::string age_text(hours age) {
    auto const count = age.count();
    if (count % 24 == 0 && count > 72) return std::to_string(count / 24) + " days";
    return std::to_string(count) + " hours";
}

std::string age_limits(Window const& window) {
    if (!window.age_from) return "up to " + age_text(*window.age_to);
    if (!window.age_to) return "from " + age_text(*window.age_from);
    return age_text(*window.age_from) + " to " + age_text(*window.age_to);
}

std::optional<NoNorm> check_age(NormDescription const& norm, Window const& window,
                                Query const& query) {
    auto const from = window.age_from.value_or(hours{0});
    if (!query.age) {
        if (from == hours{0}) return std::nullopt;
        return NoNorm{norm.norm, Why::age_unknown,
                      "for babies aged " + age_limits(window) + "; the age is not given"};
    }
    if (*query.age >= from && (!window.age_to || *query.age <= *window.age_to)) return std::nullopt;
    return NoNorm{
        norm.norm, Why::age_outside,
        "for babies aged " + age_limits(window) + "; this one is " + age_text(*query.age) + " old"};
}

std::optional<NoNorm> check_gestation(NormDescription const& norm, Window const& window,
                                      Query const& query) {
    if (!window.gestation) return std::nullopt;
    auto const limits = "for babies born at " + gestation_text(*window.gestation);
    if (!query.gestation)
        return NoNorm{norm.norm, Why::gestation_unknown, limits + "; the gestation is not given"};
    if (contains(*window.gestation, *query.gestation)) return std::nullopt;
    auto const part = overlap(*window.gestation, *query.gestation) ? "; this one may be outside: "
                                                                   : "; this one is ";
    return NoNorm{norm.norm, Why::gestation_outside,
                  limits + part + gestation_text(*query.gestation)};
}

/// What keeps the baby out of the window, the age first.
std::optional<NoNorm> obstacle(NormDescription const& norm, Window const& window,
                               Query const& query) {
    if (auto age = check_age(norm, window, query)) return age;
    return check_gestation(norm, window, query);
}

bool concerns_age(NoNorm const& reason) {
    return reason.why == Why::age_unknown || reason.why == Why::age_outside;
}

}  // namespace

tl::expected<Window, NoNorm> admitting_window(NormDescription const& norm, Query const& query) {
    if (norm.windows.empty()) return Window{};
    std::optional<NoNorm> nearest;
    for (auto const& window : norm.windows) {
        auto found = obstacle(norm, window, query);
        if (!found) return window;
        if (!nearest || (concerns_age(*nearest) && !concerns_age(*found)))
            nearest = std::move(found);
    }
    return tl::make_unexpected(*std::move(nearest));
}

}  // namespace asterism::norms
