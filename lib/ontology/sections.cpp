// SPDX-License-Identifier: MIT
#include "ontology/sections.h"

namespace asterism {

namespace {

using yaml::boolean;
using yaml::choice;
using yaml::list_of;
using yaml::maybe;
using yaml::number;
using yaml::one_or_more;
using yaml::Table;
using yaml::text;
using yaml::word;

Table<OntologyHeader> header_table() {
    Table<OntologyHeader> table("ontology header");
    table.required("id", &OntologyHeader::id, word(), "name of this ontology")
        .required("version", &OntologyHeader::version, text(), "semantic version")
        .required("hpo-version", &OntologyHeader::hpo_version, text(),
                  "release of the HPO that the ids were checked against");
    return table;
}

Table<Region> region_table() {
    Table<Region> table("region");
    table.required("region", &Region::id, word(), "id")
        .required("label", &Region::label, text(), "name in print")
        .optional("history", &Region::history, boolean(),
                  "true for the history, which is asked and not examined");
    return table;
}

Table<ExamStep> step_table() {
    Table<ExamStep> table("exam step");
    table.required("step", &ExamStep::id, word(), "id")
        .required("region", &ExamStep::region_name, word("region"), "the region it belongs to")
        .required("label", &ExamStep::label, text(), "name in print")
        .required("how", &ExamStep::how, text(), "how it is done")
        .optional("essential", &ExamStep::essential, boolean(),
                  "its omission could hide something dangerous")
        .optional("result", &ExamStep::result, boolean(),
                  "true for results of tests, which `all` does not include");
    return table;
}

yaml::Reader<Laterality> laterality() {
    return choice<Laterality>({{"none", Laterality::none}, {"paired", Laterality::paired}});
}

yaml::Reader<std::vector<Word>> hpo_ids() {
    auto reader = one_or_more(word());
    auto const read = reader.read;
    reader.read = [read](yaml::Node const& node, std::vector<Word>& target,
                         Diagnostics& diagnostics) {
        if (node.is_scalar() && node.text == "none") return;
        read(node, target, diagnostics);
    };
    return reader;
}

Table<Finding> finding_table() {
    Table<Finding> table("finding");
    table.required("finding", &Finding::id, word(), "id")
        .required("label", &Finding::label, text(), "name in print, lower case")
        .required("step", &Finding::step_name, word("step"), "the exam step that shows it")
        .required("recognise", &Finding::recognise, text(),
                  "how to see or feel it, and what it is mistaken for")
        .required("hpo", &Finding::hpo, hpo_ids(), "HPO id or ids, or `none`")
        .optional("laterality", &Finding::laterality, laterality(),
                  "`paired` when it has a left and a right")
        .optional("synonyms", &Finding::synonyms, list_of(word()),
                  "lay words, trade words, note abbreviations")
        .optional("ambiguous", &Finding::ambiguous, list_of(word()),
                  "names that another finding carries too")
        .optional("outdated", &Finding::outdated, list_of(word()),
                  "accepted on input, never printed")
        .optional("parent", &Finding::parent_name, word("finding"), "the more general finding")
        .optional("icd10", &Finding::icd10, text(), "ICD-10 code where certain")
        .optional("sex", &Finding::sex, choice<Sex>({{"female", Sex::female}, {"male", Sex::male}}),
                  "only in this sex")
        .optional("grades", &Finding::grades, list_of(word()), "from least to most severe");
    return table;
}

Table<PlausibleRange> range_table() {
    Table<PlausibleRange> table("range");
    table.required("from", &PlausibleRange::from, number(), "smallest")
        .required("to", &PlausibleRange::to, number(), "largest");
    return table;
}

using Formulas = std::vector<std::pair<std::string, Formula>>;

yaml::Shape computation_shape(Formulas const& formulas) {
    auto const two = yaml::list_shape(yaml::word_shape("measure"), 2, 2);
    std::vector<yaml::Shape> forms;
    for (auto const& [name, formula] : formulas) {
        yaml::Shape form{yaml::Shape::Kind::record, "computation", {}, {}, {}, nullptr};
        form.fields.push_back({name, true, "of these two measures", two});
        forms.push_back(std::move(form));
    }
    return yaml::either_shape(std::move(forms));
}

/// `{ difference: [a, b] }`: the key is the formula, the value names its two measures.
yaml::Reader<Computation> computation() {
    static std::vector<std::pair<std::string, Formula>> const formulas{
        {"z-difference", Formula::z_difference},
        {"difference", Formula::difference},
        {"absolute-difference", Formula::absolute_difference},
        {"mean", Formula::mean},
        {"percent", Formula::percent},
        {"ratio", Formula::ratio}};
    return {computation_shape(formulas),
            [](yaml::Node const& node, Computation& target, Diagnostics& diagnostics) {
                if (!node.is_map() || node.entries.size() != 1)
                    return yaml::wrong_form(node, "one formula with two measures", diagnostics);
                auto const& [key, value] = node.entries.front();
                choice<Formula>(formulas).read(yaml::scalar(key), target.formula, diagnostics);
                if (!value.is_list() || value.items.size() != 2)
                    return yaml::wrong_form(value, "two measures", diagnostics);
                word("measure").read(value.items[0], target.first_name, diagnostics);
                word("measure").read(value.items[1], target.second_name, diagnostics);
            }};
}

Table<Measure> measure_table() {
    Table<Measure> table("measure");
    auto const instrument = choice<Instrument>({{"tape", Instrument::tape},
                                                {"ruler", Instrument::ruler},
                                                {"scale", Instrument::scale},
                                                {"counter", Instrument::counter},
                                                {"meter", Instrument::meter}});
    table.required("measure", &Measure::id, word(), "id")
        .required("label", &Measure::label, text(), "name in print")
        .required("step", &Measure::step_name, word("step"), "the exam step that takes it")
        .required("unit", &Measure::unit, text(), "unit of norms and thresholds")
        .required("plausible", &Measure::plausible, range_table().reader(),
                  "values a living newborn can have")
        .optional("instrument", &Measure::instrument, maybe(instrument),
                  "what it is read from; required unless computed")
        .optional("computed", &Measure::computed, maybe(computation()),
                  "how it follows from two others")
        .optional("units", &Measure::units, list_of(text()),
                  "units accepted on input; default the unit alone")
        .optional("synonyms", &Measure::synonyms, list_of(word()), "other names")
        .optional("ambiguous", &Measure::ambiguous, list_of(word()),
                  "names that another measure carries too")
        .optional("resolution", &Measure::resolution, number(),
                  "smallest division of the instrument, in `unit`")
        .optional("soft", &Measure::soft, boolean(), "no referral may rest on it alone");
    return table;
}

Table<Citation> citation_table() {
    Table<Citation> table("source");
    table.required("source", &Citation::id, word(), "id: first author and year")
        .required("authors", &Citation::authors, text(), "authors or body")
        .required("title", &Citation::title, text(), "title in brief")
        .required("journal", &Citation::journal, text(), "journal, book or guideline")
        .required("year", &Citation::year, yaml::integer(1800, 2100), "year")
        .required("read", &Citation::read,
                  choice<std::string>({{"full text", "full text"},
                                       {"abstract", "abstract"},
                                       {"secondary", "secondary"},
                                       {"memory", "memory"}}),
                  "how much of it was read")
        .optional("pages", &Citation::pages, text(), "volume and pages")
        .optional("doi", &Citation::doi, text(), "digital object identifier")
        .optional("note", &Citation::note, text(), "what a reader should know about it");
    return table;
}

Table<Prevalence> prevalence_table() {
    Table<Prevalence> table("prevalence");
    table.required("finding", &Prevalence::finding_name, word("finding"), "the finding")
        .required("per-10000", &Prevalence::per_10000, number(), "newborns in 10,000 who have it")
        .required("population", &Prevalence::population, text(), "who was counted")
        .required("source", &Prevalence::sources, one_or_more(word("source")),
                  "where the figure is from")
        .optional("note", &Prevalence::note, text(), "conflicts with other figures");
    return table;
}

/// Their fields are read by a later room; that they are a list is seen here.
yaml::Reader<yaml::Node> norms() {
    auto reader = yaml::raw(yaml::list_shape(yaml::raw("norm").shape));
    reader.read = [](yaml::Node const& node, yaml::Node& target, Diagnostics& diagnostics) {
        if (!node.is_list()) return yaml::wrong_form(node, "a list", diagnostics);
        target = node;
    };
    return reader;
}

Table<OntologySections> make_file_table() {
    Table<OntologySections> table("ontology file");
    table
        .optional("ontology", &OntologySections::header, maybe(header_table().reader()),
                  "the header, once")
        .optional("regions", &OntologySections::regions, list_of(region_table().reader()),
                  "regions, head to toe")
        .optional("steps", &OntologySections::steps, list_of(step_table().reader()), "exam steps")
        .optional("findings", &OntologySections::findings, list_of(finding_table().reader()),
                  "findings")
        .optional("measures", &OntologySections::measures, list_of(measure_table().reader()),
                  "measures")
        .optional("norms", &OntologySections::norms, norms(), "norms of measures")
        .optional("sources", &OntologySections::citations, list_of(citation_table().reader()),
                  "bibliography")
        .optional("prevalences", &OntologySections::prevalences,
                  list_of(prevalence_table().reader()), "published prevalences");
    return table;
}

}  // namespace

yaml::Table<OntologySections> const& ontology_file_table() {
    static Table<OntologySections> const table = make_file_table();
    return table;
}

}  // namespace asterism
