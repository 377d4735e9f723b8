// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "cases/case.h"
#include "ontology/hpo.h"

namespace asterism {

/// The way from a foreign term to our findings.
enum class Mapping : std::uint8_t {
    exact,        ///< a finding carries the term's id
    by_ancestor,  ///< observed: the nearest findings above it, through is-a
    from_above,   ///< excluded: our findings below it, through is-a
    by_name,      ///< a code of another system whose text is exactly a name of ours
    shared_id,    ///< several findings carry the id and no common parent can stand in
    nowhere,
};

std::string_view to_text(Mapping mapping);

/// What a record says of a term. `not_now`: resolved before the examination. `not_examined`: the
/// record says that nobody looked.
enum class TermState : std::uint8_t { observed, excluded, unsure, not_now, not_examined };

std::string_view to_text(TermState state);

/// One term of a foreign record and where it led. What leads nowhere is kept, so that it is listed.
struct MappedTerm {
    Word id;            ///< as written
    std::string label;  ///< as written
    TermState state = TermState::observed;
    Mapping how = Mapping::nowhere;
    std::string via;  ///< by_ancestor: the HPO term above; exact: the id in force, when another
    std::vector<FindingId> findings;
};

/// Something that a record says and a case cannot.
struct LeftOut {
    std::string what;
    std::string why;
    Span span;
};

/// A case out of any format, with what became of the rest of the record.
struct ImportedCase {
    Case baby;
    std::vector<MappedTerm> terms;
    std::vector<LeftOut> left_out;
};

/// What readers lean on. Without `hpo` only exact ids map.
struct ImportContext {
    Ontology const& ontology;
    Hpo const* hpo = nullptr;
};

}  // namespace asterism
