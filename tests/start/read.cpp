// SPDX-License-Identifier: MIT
// `start_read`: how long a book takes to read from YAML, against yaml-cpp's own event parse of the
// same files, in one process and in turn. Prints the medians in milliseconds.
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>
#include <sstream>

#include "compile/compiled.h"

namespace {

using namespace asterism;
namespace fs = std::filesystem;

struct Ignore final : YAML::EventHandler {
    void OnDocumentStart(YAML::Mark const&) override {}
    void OnDocumentEnd() override {}
    void OnNull(YAML::Mark const&, YAML::anchor_t) override {}
    void OnAlias(YAML::Mark const&, YAML::anchor_t) override {}
    void OnScalar(YAML::Mark const&, std::string const&, YAML::anchor_t,
                  std::string const&) override {}
    void OnSequenceStart(YAML::Mark const&, std::string const&, YAML::anchor_t,
                         YAML::EmitterStyle::value) override {}
    void OnSequenceEnd() override {}
    void OnMapStart(YAML::Mark const&, std::string const&, YAML::anchor_t,
                    YAML::EmitterStyle::value) override {}
    void OnMapEnd() override {}
};

/// The files of a book as `check` reads them, vignettes included.
std::vector<SourcePtr> files_below(std::string const& folder) {
    std::vector<std::string> names;
    for (auto const& entry : fs::recursive_directory_iterator(folder)) {
        auto const name = entry.path().generic_string();
        bool const text = name.ends_with(".yaml") || name.ends_with(".csv");
        if (text && name.find("/releases/") == std::string::npos) names.push_back(name);
    }
    std::sort(names.begin(), names.end());
    std::vector<SourcePtr> files;
    for (auto const& name : names) {
        std::ifstream stream(name, std::ios::binary);
        files.push_back(make_source(name, std::string(std::istreambuf_iterator<char>(stream), {})));
    }
    return files;
}

void parse(std::vector<SourcePtr> const& files) {
    for (auto const& file : files) {
        if (file->name().ends_with(".csv")) continue;
        std::istringstream stream{std::string(file->text())};
        YAML::Parser parser(stream);
        Ignore ignore;
        while (parser.HandleNextDocument(ignore)) continue;
    }
}

void load(std::vector<SourcePtr> const& ontology_files, std::vector<SourcePtr> const& book_files) {
    Diagnostics diagnostics;
    auto ontology = load_ontology(ontology_files, diagnostics);
    auto book = load_rulebook(book_files, diagnostics);
    if (!ontology || !book) std::fputs("the book has errors\n", stderr), std::exit(1);
    auto const compiled =
        compile(std::make_shared<Rulebook const>(*std::move(book)),
                std::make_shared<Ontology const>(*std::move(ontology)), diagnostics);
    if (!compiled) std::fputs("the book does not compile\n", stderr), std::exit(1);
}

template <class Work>
double milliseconds(Work work) {
    auto const start = std::chrono::steady_clock::now();
    work();
    auto const end = std::chrono::steady_clock::now();
    return std::chrono::duration<double, std::milli>(end - start).count();
}

double median(std::vector<double> times) {
    std::sort(times.begin(), times.end());
    return times[times.size() / 2];
}

}  // namespace

int main() {
    auto const ontology = files_below("ontology");
    auto const book = files_below("rules/newborn");
    auto all = ontology;
    all.insert(all.end(), book.begin(), book.end());
    std::vector<double> parses, loads;
    for (int turn = 0; turn < 7; ++turn) {
        parses.push_back(milliseconds([&] { parse(all); }));
        loads.push_back(milliseconds([&] { load(ontology, book); }));
    }
    std::printf("%.3f %.3f\n", median(parses), median(loads));
}
