// SPDX-License-Identifier: MIT
/// A second, deliberately naive reading of a rulebook: straight recursion over the conditions
/// as written, their names looked up beforehand. It shares no evaluation code with the engine
/// (neither `lib/conditions`, nor the circuit of `lib/compile`, nor `lib/assess`); it takes from
/// the library only the loaders' plain data and the parsers of numbers and durations. Where both
/// agree on every small book and case, the engine means what section 3 of the design says. That
/// meaning, as read here:
///
/// *A finding's own state*, first line that applies:
///   1. stated present (any side): yes
///   2. stated absent without a side, or on both sides: no
///   3. derived by measures, each of which was taken and can be compared in one of its tests: no,
///      for then the derivation alone decides
///   4. stated unsure: unknown
///   5. an ancestor is stated absent (as in 2): no
///   6. possible only in the other sex, and the sex is known: no
///   7. an item of the history, and `history: none`: no
///   8. its step is done: no
///   9. unknown
/// A statement about one side only ("absent on the left") leaves the finding to the lines below it.
/// What is told and not examined (history, results of tests) and unknown counts as `no`, except in
/// a rule that lists it as essential. Tallies, constellations and derivations never see it as
/// unknown, whoever asks.
///
/// *Present*: its own state, or its derivation, or any child present. In a derivation a measure
/// that was not taken is past no cut-off (no); for a red flag, a band across the cut-off is past it
/// (yes).
///
/// *On the left* (or right), for a paired finding: stated so: yes; stated absent there: no; unsure
/// there: unknown; own state not yes: that state; stated without any side: unknown; otherwise, the
/// other side was stated: no when the step is done, else unknown. Or a child on the left. What
/// tells of no side (a child that has none, a derivation) can make it unknown, never yes, unless
/// the side was stated. `both` is left and right, `one` is present and not both.
///
/// *With a grade*: by a statement of that grade: yes; of no grade: unknown; not stated: as for
/// sides.
///
/// *Counted* is a finding that is present, has a key and a class of the tally, is no familial minor
/// variant, and has no present classed descendant. A descendant that makes the same key count (its
/// class in the tally, both minor or both not) takes nothing away, except when it is a familial
/// minor variant. A key counts when a member does; one counted by minor variants alone does not
/// when a counted major anomaly or red flag has the same key or one that covers it. Scores add
/// points. A tally is the least and the most that this comes to, and compares as such.
///
/// *Splits*: a service that no single rule settles is suggested too when rules suggest it whichever
/// way the open questions of the counting fall: each descendant that would displace a present
/// finding, each major key that would cover a counted field. Each is taken as yes and as no, all
/// combinations; the urgency is the lowest over them. Beyond four questions this is not tried, a
/// limit of the engine's (see disputed_test.cpp). The printed lower bound of a tally takes all open
/// questions as no.
///
/// *If the rest is normal*: what can be examined and is unknown is absent, a measure not taken is
/// past no cut-off, the other side of a finding stated on one side is free of it; a side or grade
/// that nobody said of a present finding, the history, sex, age and gestation stay unknown.
///
/// A norm's z-scores and centiles are given from outside: they are numbers, tested where the norms
/// are.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "cases/case.h"
#include "ontology/ontology.h"
#include "oracle/answer.h"
#include "rulebook/rulebook.h"

namespace asterism::oracle {

struct Tables;

struct Interval {
    double low = 0;
    double high = 0;
};

/// What the norms make of a measure, by norm; the preferred one stands under the empty name.
struct NormBand {
    std::string norm;
    Interval band;
};

/// Of two entries of the same measure or norm the first counts.
struct Given {
    MeasureId measure = 0;
    std::optional<Interval> value;  ///< used only for measures that are computed from others
    std::vector<NormBand> z;
    std::vector<NormBand> centile;
};

using Numbers = std::vector<Given>;

/// Which rules and tallies are asked again when more is supposed than was at first.
enum class Asking {
    open_rules,  ///< those that can then say something else: what is settled stays so
    all_rules,   ///< every one, to see that this makes no difference
};

class Oracle {
public:
    /// Book and ontology must outlive the oracle. The book must be one that the compiler accepts.
    Oracle(Rulebook const& book, Ontology const& ontology);
    ~Oracle();

    Answer answer(Case const& baby, Numbers const& numbers = {},
                  Asking asking = Asking::open_rules) const;

private:
    std::unique_ptr<Tables const> tables_;
};

}  // namespace asterism::oracle
