// SPDX-License-Identifier: MIT
#include "case_input.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include <fmt/format.h>

#include "base/named.h"
#include "files.h"
#include "options.h"
#include "terminal.h"

namespace asterism::cli {

namespace {

namespace fs = std::filesystem;

/// A release has some 20 MB; ten times that is no release.
constexpr std::size_t most_hpo_bytes = 200u << 20;

std::optional<std::string> read_bytes(std::string const& path, Diagnostics& diagnostics) {
    std::error_code error;
    auto const size = fs::file_size(path, error);
    std::ifstream stream(path, std::ios::binary);
    Span const place{make_source(path, ""), 0, 0};
    if (error || !stream) {
        diagnostics.error(
            "cannot-read", place,
            fmt::format("the file cannot be read: {}", error ? error.message() : "no permission"));
        return std::nullopt;
    }
    if (size > most_hpo_bytes) {
        diagnostics.error("too-large", place,
                          fmt::format("the file is larger than {} MiB", most_hpo_bytes >> 20));
        return std::nullopt;
    }
    std::ostringstream bytes;
    bytes << stream.rdbuf();
    return std::move(bytes).str();
}

bool has_ending(std::string const& path, CaseReader const& reader) {
    return std::any_of(reader.endings.begin(), reader.endings.end(),
                       [&](std::string_view ending) { return path.ends_with(ending); });
}

std::vector<std::string> files_in(std::string const& folder, CaseReader const* reader) {
    std::vector<std::string> paths;
    for (auto const& entry : fs::recursive_directory_iterator(folder)) {
        auto const path = entry.path().string();
        bool const wanted = reader ? has_ending(path, *reader) : case_reader_for(path) != nullptr;
        if (entry.is_regular_file() && wanted) paths.push_back(path);
    }
    std::sort(paths.begin(), paths.end());
    return paths;
}

CaseInput read_file(std::string const& path, CaseReader const* reader,
                    ImportContext const& context) {
    CaseInput input;
    input.reader = reader ? reader : case_reader_for(path);
    if (!input.reader)
        throw UsageError(fmt::format("cannot tell the format of `{}` by its name; give one of: {}",
                                     path, reader_names()));
    if (path == "-" && stdin_is_terminal())
        report("reading cases from the terminal; end with ctrl-d\n");
    if (auto const source = read_source(path, input.diagnostics))
        input.cases = input.reader->read(source, context, input.diagnostics);
    return input;
}

}  // namespace

std::string reader_names() { return fmt::format("{}", fmt::join(names_of(case_readers()), ", ")); }

CaseReader const& reader_named(std::string const& name) {
    if (auto const* reader = case_reader(name)) return *reader;
    refuse_format(name, names_of(case_readers()));
}

std::optional<Hpo> load_hpo(std::string const& path, Diagnostics& diagnostics) {
    auto bytes = read_bytes(path, diagnostics);
    if (!bytes) return std::nullopt;
    if (is_gzip(*bytes)) {
        auto text = unpack_gzip(*bytes, most_hpo_bytes);
        if (!text) {
            diagnostics.error("bad-gzip", {make_source(path, ""), 0, 0}, text.error());
            return std::nullopt;
        }
        bytes = std::move(*text);
    }
    return read_hpo(make_source(path, std::move(*bytes)), diagnostics);
}

std::vector<CaseInput> read_case_files(std::vector<std::string> const& paths,
                                       std::string const& reader_name,
                                       ImportContext const& context) {
    auto const* reader = reader_name.empty() ? nullptr : &reader_named(reader_name);
    std::vector<CaseInput> inputs;
    for (auto const& path : paths) {
        std::error_code error;
        if (!fs::is_directory(path, error)) {
            inputs.push_back(read_file(path, reader, context));
            continue;
        }
        auto const files = files_in(path, reader);
        if (files.empty())
            throw UsageError(fmt::format("the folder `{}` holds no file of this format", path));
        for (auto const& file : files) inputs.push_back(read_file(file, reader, context));
    }
    return inputs;
}

HpoUsed hpo_used(std::optional<Hpo> const& hpo, Ontology const& ontology) {
    return {hpo ? hpo->version() : std::string(), ontology.header.hpo_version, hpo.has_value()};
}

}  // namespace asterism::cli
