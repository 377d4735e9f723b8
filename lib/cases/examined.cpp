// SPDX-License-Identifier: MIT
#include "cases/examined.h"

#include <algorithm>

#include "yaml/reader.h"

namespace asterism {

namespace {

class Examined {
public:
    Examined(Ontology const& ontology, std::vector<bool>& done, Diagnostics& diagnostics)
        : ontology_(ontology), done_(done), diagnostics_(diagnostics) {}

    void item(yaml::Node const& node) {
        if (node.is_scalar()) return mark(node.word(), true);
        auto const* except =
            node.is_map() && node.entries.size() == 1 ? node.find("except") : nullptr;
        if (!except)
            return yaml::wrong_form(node, "a step, a region, `all`, `none` or `except: [...]`",
                                    diagnostics_);
        exceptions_.push_back(except);
    }

    /// Exceptions come last wherever they stand, so that their order does not matter.
    void take_exceptions_out() {
        for (auto const* except : exceptions_) {
            std::vector<Word> words;
            yaml::one_or_more(yaml::word("step")).read(*except, words, diagnostics_);
            for (auto const& word : words) {
                if (!word.empty()) mark(word, false);
            }
        }
    }

private:
    void mark(Word const& word, bool done) {
        if (word.text == "none") return;
        if (word.text == "all") return mark_region(std::nullopt, done);
        auto const steps = ontology_.step_names.exact(word.text);
        auto const regions = ontology_.region_names.exact(word.text);
        for (auto const region : regions) mark_region(region, done);
        for (auto const step : steps) done_[step] = done;
        if (steps.empty() && regions.empty()) report(word);
    }

    void mark_region(std::optional<RegionId> region, bool done) {
        for (StepId step = 0; step < ontology_.steps.size(); ++step) {
            auto const of = ontology_.steps[step].region;
            bool const wanted =
                region ? of == *region
                       : !ontology_.regions[of].history && (!done || !ontology_.steps[step].result);
            if (wanted) done_[step] = done;
        }
    }

    void report(Word const& word) {
        auto names = ontology_.step_names.printed();
        auto const& regions = ontology_.region_names.printed();
        names.insert(names.end(), regions.begin(), regions.end());
        names.emplace_back("all");
        yaml::unknown_word(word, "step", names, diagnostics_);
    }

    Ontology const& ontology_;
    std::vector<bool>& done_;
    Diagnostics& diagnostics_;
    std::vector<yaml::Node const*> exceptions_;
};

}  // namespace

yaml::Shape examined_shape() {
    auto const word = yaml::word_shape("step");
    auto const words = yaml::either_shape({word, yaml::list_shape(word)});
    yaml::Shape except{yaml::Shape::Kind::record, "exception", {}, {}, {}, nullptr};
    except.fields.push_back({"except", true, "steps and regions that were left out", words});
    auto const item = yaml::either_shape({word, except});
    return yaml::either_shape({item, yaml::list_shape(item), yaml::nothing_shape()});
}

void read_examined(yaml::Node const& node, Ontology const& ontology, std::vector<bool>& step_done,
                   Diagnostics& diagnostics) {
    if (node.kind == yaml::Kind::null) return;
    Examined examined(ontology, step_done, diagnostics);
    if (node.is_list()) {
        for (auto const& item : node.items) examined.item(item);
    } else {
        examined.item(node);
    }
    examined.take_exceptions_out();
}

}  // namespace asterism
