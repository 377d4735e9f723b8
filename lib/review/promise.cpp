// SPDX-License-Identifier: MIT
#include "review/promise.h"

#include <numeric>

#include <fmt/format.h>

#include "compile/names.h"
#include "conditions/read.h"
#include "review/promise_builder.h"

namespace asterism {

namespace {

class PromiseCompiler {
public:
    PromiseCompiler(Promises& result, Diagnostics& diagnostics)
        : result_(result),
          diagnostics_(diagnostics),
          names_(index_names(*result.book.book, reported_before_)),
          builder_(result.book) {}

    void run() {
        auto const& promises = result_.book.book->promises;
        for (std::uint32_t i = 0; i < promises.size(); ++i) {
            CompiledPromise promise;
            promise.syntax = i;
            check_parts(promises[i]);
            check_sources(promises[i]);
            compile(promises[i], promise);
            result_.all.push_back(std::move(promise));
        }
    }

private:
    void wrong(PromiseSyntax const& syntax, std::string message) {
        diagnostics_.error("bad-promise", syntax.id.span, std::move(message));
    }

    void check_parts(PromiseSyntax const& syntax) {
        if (syntax.for_each && syntax.adding)
            wrong(syntax, "`for-each` and `adding` do not go together");
        if ((syntax.alone || syntax.familial) && !syntax.for_each)
            wrong(syntax, "`alone` and `familial` need `for-each`");
        if (syntax.then.empty()) wrong(syntax, "the promise says nothing under `then`");
        for (auto const& outcome : syntax.then) {
            bool const keeps = outcome.keeps_urgency || outcome.keeps_services;
            if (keeps == syntax.adding.has_value()) continue;
            diagnostics_.error("bad-promise", outcome.span,
                               "`keeps` goes with `adding`, and `adding` with nothing else");
        }
    }

    void check_sources(PromiseSyntax const& syntax) {
        auto const& names = result_.book.ontology->citation_names;
        for (auto const& source : syntax.sources) {
            std::uint32_t id = 0;
            if (source.text != "common-practice")
                look_up(names, source, "source", id, diagnostics_);
        }
    }

    std::optional<Literal> condition(yaml::Node const& node) {
        if (node.kind == yaml::Kind::null) return std::nullopt;
        ReadContext const context{*result_.book.ontology, names_.tallies, names_.constellations,
                                  diagnostics_};
        auto const read = read_condition(node, context);
        return read ? std::optional(asterism::compile(read, builder_).literal) : std::nullopt;
    }

    std::vector<FindingId> of_class(FindingClass value) const {
        std::vector<FindingId> result;
        for (FindingId id = 0; id < result_.book.classes.size(); ++id) {
            if (result_.book.class_of(id) == value) result.push_back(id);
        }
        return result;
    }

    void take_out(Word const& word, std::vector<FindingId>& findings) {
        ReadContext const context{*result_.book.ontology, names_.tallies, names_.constellations,
                                  diagnostics_};
        FindingId id = 0;
        if (word.empty() || !read_finding(word, context, id)) return;
        if (std::erase(findings, id) > 0) return;
        diagnostics_.error("bad-promise", word.span,
                           fmt::format("`{}` is not of the class named", word.text));
    }

    std::vector<ServiceId> services(std::vector<Word> const& words) {
        std::vector<ServiceId> result;
        if (words.size() == 1 && words.front().text == "any") {
            result.resize(result_.book.book->services.size());
            std::iota(result.begin(), result.end(), ServiceId{0});
            return result;
        }
        for (auto const& word : words) {
            ServiceId service = 0;
            if (look_up(names_.services, word, "service", service, diagnostics_)) {
                result.push_back(service);
            }
        }
        return result;
    }

    CompiledOutcome outcome(PromiseOutcome const& syntax) {
        using Kind = CompiledOutcome::Kind;
        auto const urgency = syntax.at_least.value_or(Urgency::routine);
        if (!syntax.suggest.empty()) return {Kind::suggest, services(syntax.suggest), urgency, {}};
        if (!syntax.never.empty()) return {Kind::never, services(syntax.never), urgency, {}};
        if (syntax.keeps_urgency) return {Kind::keeps_urgency, {}, urgency, {}};
        if (syntax.keeps_services) return {Kind::keeps_services, {}, urgency, {}};
        bool const met = syntax.holds.kind != yaml::Kind::null;
        auto const literal = condition(met ? syntax.holds : syntax.never_met);
        return {met ? Kind::holds : Kind::never_met, {}, urgency, literal.value_or(Literal{})};
    }

    void compile(PromiseSyntax const& syntax, CompiledPromise& promise) {
        promise.when = condition(syntax.when);
        promise.adding = syntax.adding.has_value();
        auto const named = syntax.adding ? syntax.adding : syntax.for_each;
        if (named) promise.findings = of_class(*named);
        for (auto const& word : syntax.except) take_out(word, promise.findings);
        if (named && promise.findings.empty()) wrong(syntax, "no finding has this class");
        for (auto const id : promise.findings) {
            if (syntax.familial) builder_.familial(id);
        }
        for (auto const& part : syntax.then) promise.then.push_back(outcome(part));
    }

    Promises& result_;
    Diagnostics& diagnostics_;
    Diagnostics reported_before_;
    BookNames names_;
    PromiseBuilder builder_;
};

}  // namespace

std::optional<Promises> compile_promises(CompiledRulebook const& book, Diagnostics& diagnostics) {
    Diagnostics problems;
    Promises result{book, {}};
    PromiseCompiler(result, problems).run();
    diagnostics.append(problems);
    if (problems.has_errors()) return std::nullopt;
    return result;
}

}  // namespace asterism
