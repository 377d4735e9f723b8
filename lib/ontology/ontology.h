// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/diagnostic.h"
#include "base/lazy_list.h"
#include "ontology/finding.h"
#include "ontology/measure.h"
#include "ontology/names.h"
#include "yaml/node.h"

namespace asterism {

struct OntologyHeader {
    Word id;
    std::string version;
    std::string hpo_version;
};

/// What an engine asks of every finding. It says the same as the finding itself, which may still
/// have to be read.
struct FindingFrame {
    StepId step = 0;
    std::optional<FindingId> parent;
    Sex sex = Sex::not_given;
    bool history = false;
};

/// Everything that can be seen, done or measured. Built once by `load_ontology`, then immutable and
/// shared.
struct Ontology {
    OntologyHeader header;
    std::vector<Region> regions;
    std::vector<ExamStep> steps;
    LazyList<Finding> findings;
    std::vector<FindingFrame> frames;  ///< by FindingId
    std::vector<Measure> measures;
    LazyList<Citation> citations;
    LazyList<Prevalence> prevalences;
    std::vector<yaml::Node> norms;   ///< sections read by the norms
    std::vector<Word> norm_sources;  ///< what those sections cite
    std::vector<SourcePtr> tables;   ///< the .csv files beside the sections, which norms read
    std::string digest;              ///< SHA-256 of the files it was read from

    NameIndex finding_names;  ///< ids, labels, synonyms, HPO ids
    NameIndex step_names;     ///< steps by id and label
    NameIndex region_names;
    NameIndex measure_names;
    NameIndex citation_names;
    NameIndex norm_names;  ///< norms by id

    /// The finding with exactly this id.
    std::optional<FindingId> finding(std::string_view id) const;
    std::optional<MeasureId> measure(std::string_view id) const;
    std::optional<StepId> step(std::string_view id) const;

    Finding const& at(FindingId id) const { return findings[id]; }
    FindingFrame const& frame(FindingId id) const { return frames[id]; }
    ExamStep const& step_of(FindingId id) const { return steps[frames[id].step]; }
    Region const& region_of(FindingId id) const { return regions[step_of(id).region]; }

    /// All findings below one, nearest first; without itself.
    std::vector<FindingId> descendants(FindingId id) const;
    /// The chain of parents, nearest first; without itself.
    std::vector<FindingId> ancestors(FindingId id) const;

    /// Fills `frames` from the findings.
    void frame_findings();

    /// Ids as they were read from YAML, the first of two equal ones counting; empty out of an
    /// image.
    std::unordered_map<std::string, FindingId> finding_by_id;
    std::unordered_map<std::string, MeasureId> measure_by_id;
    std::unordered_map<std::string, StepId> step_by_id;
};

/// Reads and checks an ontology from its files (any order; sections may be spread over them). Files
/// that end in .csv are the tables of norms: they count for the digest and are read with the norms.
/// Nothing is returned when there are errors; all of them are reported.
std::optional<Ontology> load_ontology(std::vector<SourcePtr> const& files,
                                      Diagnostics& diagnostics);

}  // namespace asterism
