// SPDX-License-Identifier: MIT
/// What conditions say of a case.
#include "oracle/judge.h"
#include "oracle/kleene.h"

namespace asterism::oracle {

namespace {

using Kind = ConditionText::Kind;

bool fits(double value, Limit const& limit) {
    switch (limit.kind) {
        case Limit::Kind::above: return value > limit.value;
        case Limit::Kind::at_least: return value >= limit.value;
        case Limit::Kind::below: return value < limit.value;
        case Limit::Kind::at_most: return value <= limit.value;
    }
    return false;
}

/// What a value known to lie between `low` and `high` is to one bound.
Truth meets(Limit const& limit, double low, double high) {
    if (fits(low, limit) && fits(high, limit)) return Truth::yes;
    return fits(low, limit) || fits(high, limit) ? Truth::unknown : Truth::no;
}

/// All bounds together.
Truth within(std::vector<Limit> const& limits, double low, double high) {
    auto value = Truth::yes;
    for (auto const& limit : limits) value = both(value, meets(limit, low, high));
    return value;
}

std::optional<Interval> by_norm(std::vector<NormBand> const& bands, std::string const& norm) {
    for (auto const& band : bands) {
        if (band.norm == norm) return band.band;
    }
    return std::nullopt;
}

}  // namespace

Truth Judge::holds(ConditionText const& condition, Asker const& asker) {
    auto const value = kind_holds(condition, asker);
    return condition.denied ? opposite(value) : value;
}

Truth Judge::kind_holds(ConditionText const& c, Asker const& asker) {
    switch (c.kind) {
        case Kind::finding: return finding_test(c, asker);
        case Kind::all: return every(c.parts, asker);
        case Kind::any: return some(c.parts, asker);
        case Kind::at_least: return at_least(c.wanted, c.parts, asker);
        case Kind::tally: return tally_test(c);
        case Kind::constellation: return reached(c.number);
        case Kind::measured: return measure_test(c, asker);
        case Kind::age: return age_test(c);
        case Kind::gestation: return gestation_test(c);
        case Kind::sex: return sex_test(c.sex);
    }
    return Truth::unknown;
}

Truth Judge::every(std::vector<ConditionText> const& parts, Asker const& asker) {
    auto result = Truth::yes;
    for (auto const& part : parts) {
        result = both(result, holds(part, asker));
        if (result == Truth::no) break;
    }
    return result;
}

Truth Judge::some(std::vector<ConditionText> const& parts, Asker const& asker) {
    auto result = Truth::no;
    for (auto const& part : parts) {
        result = either(result, holds(part, asker));
        if (result == Truth::yes) break;
    }
    return result;
}

Truth Judge::at_least(std::size_t wanted, std::vector<ConditionText> const& parts,
                      Asker const& asker) {
    std::size_t certain = 0;
    std::size_t open = 0;
    for (auto const& part : parts) {
        auto const value = holds(part, asker);
        if (value == Truth::yes) ++certain;
        if (value == Truth::unknown) ++open;
    }
    if (certain >= wanted) return Truth::yes;
    return certain + open >= wanted ? Truth::unknown : Truth::no;
}

Truth Judge::tally_test(ConditionText const& condition) {
    auto const bounds = tally(condition.number);
    auto const low = static_cast<double>(bounds.low);
    auto const high = static_cast<double>(bounds.high);
    return within(condition.limits, low, high);
}

/// Between which numbers the measure lies: half the smallest division of tape and ruler either way.
std::optional<Interval> Judge::band(ConditionText const& condition) const {
    Given const* given = nullptr;
    for (auto const& other : numbers_) {
        if (!given && other.measure == condition.number) given = &other;
    }
    if (condition.statistic != Statistic::value) {
        if (!given) return std::nullopt;
        return by_norm(condition.statistic == Statistic::z ? given->z : given->centile,
                       condition.norm);
    }
    auto const& measure = tables_.ontology.measures[condition.number];
    for (auto const& taken : baby_.measures) {
        if (taken.measure != condition.number) continue;
        bool const by_eye =
            measure.instrument == Instrument::tape || measure.instrument == Instrument::ruler;
        double const margin = by_eye ? measure.resolution / 2 : 0;
        return Interval{taken.value - margin, taken.value + margin};
    }
    return given ? given->value : std::nullopt;
}

/// The comparison, when the measure was taken and has such a number.
std::optional<Truth> Judge::compare(ConditionText const& condition) const {
    auto const value = band(condition);
    if (!value) return std::nullopt;
    return within(condition.limits, value->low, value->high);
}

Truth Judge::measure_test(ConditionText const& condition, Asker const& asker) {
    auto const value = compare(condition);
    if (!asker.deriving) {
        if (value) return *value;
        return unrecorded_ == Unrecorded::is_normal ? Truth::no : Truth::unknown;
    }
    if (!value) return Truth::no;
    return asker.deriving->red_flag ? certainly(*value != Truth::no) : *value;
}

Truth Judge::age_test(ConditionText const& condition) const {
    if (!baby_.age) return Truth::unknown;
    return within(condition.limits, baby_.age->hours, baby_.age->hours);
}

Truth Judge::gestation_test(ConditionText const& condition) const {
    if (!baby_.gestation) return Truth::unknown;
    return within(condition.limits, baby_.gestation->min_days, baby_.gestation->max_days);
}

Truth Judge::sex_test(Sex sex) const {
    bool const known = baby_.sex == Sex::female || baby_.sex == Sex::male;
    return known ? certainly(baby_.sex == sex) : Truth::unknown;
}

}  // namespace asterism::oracle
