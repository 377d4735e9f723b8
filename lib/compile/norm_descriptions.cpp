// SPDX-License-Identifier: MIT
#include "compile/norm_descriptions.h"

#include <algorithm>

#include <fmt/format.h>

#include "compile/names.h"
#include "compile/norm_sections.h"

namespace asterism {

namespace {

/// The part of a path behind the last slash: how a norm calls its table.
std::string_view base_name(std::string_view path) {
    auto const slash = path.find_last_of("/\\");
    return slash == std::string_view::npos ? path : path.substr(slash + 1);
}

class Reader {
public:
    Reader(Ontology const& ontology, Diagnostics& diagnostics)
        : ontology_(ontology), diagnostics_(diagnostics) {}

    std::shared_ptr<norms::Standards const> read() {
        for (auto const& section : ontology_.norms) {
            for (auto const& node : section.items) read_norm(node);
        }
        check_tables();
        if (diagnostics_.has_errors()) return nullptr;
        auto built = norms::Standards::build(descriptions(), texts());
        if (built) return std::make_shared<norms::Standards const>(*std::move(built));
        for (auto const& error : built.error()) report(error);
        return nullptr;
    }

private:
    void read_norm(yaml::Node const& node) {
        NormSyntax syntax;
        norm_table().read(node, syntax, diagnostics_);
        syntax.norm = syntax.id.text;
        if (syntax.label.empty()) syntax.label = syntax.norm;
        for (auto const& measure : syntax.measure_names) {
            if (measure.empty()) continue;
            if (ontology_.measure(measure.text)) {
                syntax.measures.push_back(measure.text);
            } else {
                auto const nearest = ids_of_measures().resolve(measure.text).nearest;
                report_unresolved(measure, "measure", {{}, nearest}, {}, diagnostics_);
            }
        }
        for (auto const& source : syntax.source_names) {
            std::uint32_t ignored = 0;
            look_up(ontology_.citation_names, source, "source", ignored, diagnostics_);
            syntax.sources.push_back(source.text);
        }
        check_supplied(syntax);
        norms_.push_back(std::move(syntax));
    }

    /// Norms name measures by id alone, so only ids may be offered as the nearest names.
    NameIndex ids_of_measures() const {
        NameIndex ids;
        for (MeasureId id = 0; id < ontology_.measures.size(); ++id)
            ids.add(ontology_.measures[id].id.text, id);
        return ids;
    }

    void check_supplied(NormSyntax const& syntax) {
        auto const wanted = supplied_table_name(syntax.norm);
        if (syntax.bundled || syntax.table == wanted) return;
        diagnostics_.error("bad-table", syntax.id.span,
                           fmt::format("the table that a user supplies for `{}` is called `{}`",
                                       syntax.norm, wanted));
    }

    bool used(SourcePtr const& table) const {
        return std::any_of(norms_.begin(), norms_.end(), [&](NormSyntax const& norm) {
            return norm.table == base_name(table->name());
        });
    }

    void check_tables() {
        for (auto const& table : ontology_.tables) {
            if (used(table)) continue;
            diagnostics_.error(
                "unused-table", {table, 0, 0},
                fmt::format("no norm has a table called `{}`", base_name(table->name())));
        }
    }

    std::vector<norms::NormDescription> descriptions() const {
        return {norms_.begin(), norms_.end()};
    }

    norms::TableTexts texts() const {
        norms::TableTexts texts;
        for (auto const& table : ontology_.tables)
            texts.insert_or_assign(std::string(base_name(table->name())),
                                   std::string(table->text()));
        return texts;
    }

    Span place(norms::NormError const& error) const {
        for (auto const& table : ontology_.tables) {
            if (error.table.empty() || base_name(table->name()) != error.table) continue;
            auto const line = static_cast<std::uint32_t>(std::max(error.line, 1));
            return {table, table->line_start(line - 1), table->line_start(line - 1)};
        }
        for (auto const& norm : norms_) {
            if (norm.norm == error.norm) return norm.id.span;
        }
        return {};
    }

    void report(norms::NormError const& error) {
        diagnostics_.error("bad-norm", place(error),
                           fmt::format("norm `{}`: {}", error.norm, error.message));
    }

    Ontology const& ontology_;
    Diagnostics& diagnostics_;
    std::vector<NormSyntax> norms_;
};

}  // namespace

std::string supplied_table_name(std::string_view norm) { return fmt::format("{}.csv", norm); }

std::shared_ptr<norms::Standards const> read_standards(Ontology const& ontology,
                                                       Diagnostics& diagnostics) {
    Diagnostics problems;
    auto standards = Reader(ontology, problems).read();
    diagnostics.append(problems);
    return standards;
}

}  // namespace asterism
