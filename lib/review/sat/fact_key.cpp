// SPDX-License-Identifier: MIT
#include "review/sat/fact_key.h"

namespace asterism::sat {

FactKey key_of(CompiledRulebook const& book, Fact const& fact) {
    FactKey key{fact.kind, fact.index, 0, {}, {}};
    switch (fact.kind) {
        case Fact::Kind::grade: key.grade = fact.detail; break;
        case Fact::Kind::measure:
        case Fact::Kind::measure_by_eye:
        case Fact::Kind::measure_red_flag: key.test = book.measure_tests[fact.detail]; break;
        case Fact::Kind::age:
        case Fact::Kind::gestation: key.range = book.ranges[fact.detail]; break;
        default: break;
    }
    return key;
}

bool about_finding(FactKey const& key) {
    switch (key.kind) {
        case Fact::Kind::finding:
        case Fact::Kind::history_assumed:
        case Fact::Kind::left:
        case Fact::Kind::right:
        case Fact::Kind::grade:
        case Fact::Kind::familial: return true;
        default: return false;
    }
}

}  // namespace asterism::sat
