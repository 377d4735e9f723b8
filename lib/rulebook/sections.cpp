// SPDX-License-Identifier: MIT
#include "rulebook/sections.h"

#include "rulebook/promise.h"
#include "rulebook/vocabulary.h"

namespace asterism {

namespace {

using yaml::boolean;
using yaml::list_of;
using yaml::maybe;
using yaml::number;
using yaml::one_or_more;
using yaml::raw;
using yaml::Table;
using yaml::text;
using yaml::word;

constexpr auto sources_doc = "ids of the bibliography, or `common-practice`";

auto sources() { return one_or_more(word("source")); }

Table<RulebookHeader> header_table() {
    Table<RulebookHeader> table("rulebook header");
    table.required("id", &RulebookHeader::id, word(), "name of the book")
        .required("title", &RulebookHeader::title, text(), "title in print")
        .required("version", &RulebookHeader::version, text(), "semantic version of the content")
        .required("effective", &RulebookHeader::effective, word(), "day from which it is in force")
        .required("language", &RulebookHeader::language, yaml::integer(1, 1),
                  "version of the rule language")
        .required("ontology", &RulebookHeader::ontology, word(), "id of the ontology it speaks of");
    return table;
}

Table<Service> service_table() {
    Table<Service> table("service");
    table.required("service", &Service::id, word(), "id")
        .required("label", &Service::label, text(), "name in print");
    return table;
}

Table<CountingKey> key_table() {
    Table<CountingKey> table("counting key");
    table.required("key", &CountingKey::id, word(), "id")
        .required("kind", &CountingKey::kind, key_kind_reader(), "field, sequence or system")
        .required("because", &CountingKey::because, text(), "why its findings count once")
        .optional("covers", &CountingKey::covers, list_of(word("key")),
                  "fields not counted beside a major of this key");
    return table;
}

Table<Classification> class_table() {
    Table<Classification> table("class");
    table.required("finding", &Classification::finding, word("finding"), "the finding")
        .required("class", &Classification::value, finding_class_reader(), "what it means")
        .required("because", &Classification::because, text(), "why, in one line")
        .required("sources", &Classification::sources, sources(), sources_doc)
        .optional("key", &Classification::key, word("key"), "its counting key");
    return table;
}

Table<Derivation> derived_table() {
    Table<Derivation> table("derived finding");
    table.required("derive", &Derivation::finding, word("finding"), "the finding concluded")
        .required("when", &Derivation::when, raw("condition"), "the condition")
        .required("because", &Derivation::because, text(), "why")
        .required("sources", &Derivation::sources, sources(), sources_doc);
    return table;
}

Table<ScoreItem> item_table() {
    Table<ScoreItem> table("item");
    table.required("item", &ScoreItem::item, word(), "name in print")
        .required("when", &ScoreItem::when, raw("condition"), "the condition")
        .optional("points", &ScoreItem::points, number(), "points; default 1");
    return table;
}

Table<TallySyntax> tally_table() {
    Table<TallySyntax> table("tally");
    table.required("tally", &TallySyntax::id, word(), "id")
        .required("label", &TallySyntax::label, text(), "what is counted, in the plural")
        .optional("count", &TallySyntax::count, one_or_more(finding_class_reader()),
                  "classes whose keys are counted")
        .optional("score", &TallySyntax::score, list_of(item_table().reader()),
                  "items whose points are summed")
        .optional("sources", &TallySyntax::sources, sources(), sources_doc);
    return table;
}

/// A list of items, or a map from group names to lists of items.
yaml::Reader<std::vector<ItemGroup>> groups_reader() {
    auto const items = list_of(item_table().reader());
    auto shape = yaml::either_shape({items.shape, yaml::map_shape(items.shape)});
    return {std::move(shape), [items](yaml::Node const& node, std::vector<ItemGroup>& target,
                                      Diagnostics& diagnostics) {
                if (!node.is_map()) {
                    ItemGroup group;
                    items.read(node, group.items, diagnostics);
                    return target.push_back(std::move(group));
                }
                for (auto const& [name, value] : node.entries) {
                    ItemGroup group{name, {}};
                    items.read(value, group.items, diagnostics);
                    target.push_back(std::move(group));
                }
            }};
}

Table<ConstellationSyntax> constellation_table() {
    Table<ConstellationSyntax> table("constellation");
    table.required("constellation", &ConstellationSyntax::id, word(), "id")
        .required("label", &ConstellationSyntax::label, text(),
                  "name in print; never a diagnosis of the baby")
        .required("for", &ConstellationSyntax::service, word("service"),
                  "the service that should consider it")
        .required("items", &ConstellationSyntax::groups, groups_reader(),
                  "what is counted, in groups where the rule has them")
        .required("reached", &ConstellationSyntax::reached, raw("condition"),
                  "the published counting rule")
        .required("strength", &ConstellationSyntax::strength, strength_reader(), "what it rests on")
        .required("sources", &ConstellationSyntax::sources, sources(), sources_doc)
        .optional("note", &ConstellationSyntax::note, text(),
                  "what a reader should know about the rule");
    return table;
}

Table<Action> action_table() {
    Table<Action> table("action");
    table.required("action", &Action::id, word(), "id")
        .required("text", &Action::text, text(), "the sentence printed");
    return table;
}

Table<Suggestion> suggestion_table() {
    Table<Suggestion> table("suggestion");
    table.required("service", &Suggestion::service, word("service"), "who should see the baby")
        .required("urgency", &Suggestion::urgency, urgency_reader(), "how soon");
    return table;
}

Table<FollowUp> follow_up_table() {
    Table<FollowUp> table("follow-up");
    table.required("action", &FollowUp::action, word("action"), "what is due")
        .required("from", &FollowUp::from, word(), "start of the window, counted from birth")
        .required("to", &FollowUp::to, word(), "end of the window, counted from birth");
    return table;
}

Table<Rule> rule_table() {
    Table<Rule> table("rule");
    table.required("rule", &Rule::id, word(), "id, in plain words")
        .required("when", &Rule::when, raw("condition"), "the condition")
        .required("suggest", &Rule::suggest, one_or_more(suggestion_table().reader()),
                  "services and urgencies")
        .required("because", &Rule::because, text(), "the sentence for the reader at the bedside")
        .required("strength", &Rule::strength, strength_reader(), "what it rests on")
        .required("sources", &Rule::sources, sources(), sources_doc)
        .optional("first-steps", &Rule::first_steps, list_of(word("action")),
                  "what to do meanwhile")
        .optional("follow-up", &Rule::follow_up, one_or_more(follow_up_table().reader()),
                  "what is due later")
        .optional("essential", &Rule::essential, list_of(word("finding")),
                  "history items that must be known")
        .optional("caution", &Rule::caution, text(), "shown with the suggestion");
    return table;
}

Table<VignetteSyntax> vignette_table() {
    Table<VignetteSyntax> table("vignette");
    table.required("vignette", &VignetteSyntax::id, word(), "id")
        .required("story", &VignetteSyntax::story, text(), "the baby in a sentence")
        .required("case", &VignetteSyntax::baby, raw("case"), "the case")
        .required("expect", &VignetteSyntax::expect, raw("expectation"), "what the book must say")
        .required("sources", &VignetteSyntax::sources, sources(), sources_doc)
        .optional("published", &VignetteSyntax::published, boolean(),
                  "from a published case or guideline example")
        .optional("generated", &VignetteSyntax::generated, boolean(),
                  "proposed by the program, not yet owned by a person");
    return table;
}

Table<RulebookSections> make_file_table() {
    Table<RulebookSections> table("rulebook file");
    table
        .optional("rulebook", &RulebookSections::header, maybe(header_table().reader()),
                  "the header, once")
        .optional("services", &RulebookSections::services, list_of(service_table().reader()),
                  "services, in order of report")
        .optional("keys", &RulebookSections::keys, list_of(key_table().reader()), "counting keys")
        .optional("classes", &RulebookSections::classes, list_of(class_table().reader()),
                  "what each finding means")
        .optional("derived", &RulebookSections::derived, list_of(derived_table().reader()),
                  "findings that the book concludes")
        .optional("tallies", &RulebookSections::tallies, list_of(tally_table().reader()),
                  "counts and scores")
        .optional("constellations", &RulebookSections::constellations,
                  list_of(constellation_table().reader()), "published patterns")
        .optional("actions", &RulebookSections::actions, list_of(action_table().reader()),
                  "first steps and follow-ups")
        .optional("rules", &RulebookSections::rules, list_of(rule_table().reader()),
                  "referral rules")
        .optional("promises", &RulebookSections::promises, list_of(promise_table().reader()),
                  "what must hold for every baby")
        .optional("vignettes", &RulebookSections::vignettes, list_of(vignette_table().reader()),
                  "worked babies");
    return table;
}

}  // namespace

yaml::Table<RulebookSections> const& rulebook_file_table() {
    static Table<RulebookSections> const table = make_file_table();
    return table;
}

}  // namespace asterism
