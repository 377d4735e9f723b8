// SPDX-License-Identifier: MIT
#include "files.h"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>

#include <fmt/format.h>

#include "embedded/embedded.h"
#include "rulebook/release.h"
#include "yaml/limits.h"

namespace asterism::cli {

namespace {

namespace fs = std::filesystem;

std::string read_up_to_limit(std::istream& stream) {
    std::string text;
    std::string block(1u << 13, '\0');  // more than most cases have
    while (stream && text.size() <= yaml::most_bytes) {
        stream.read(block.data(), static_cast<std::streamsize>(block.size()));
        text.append(block, 0, static_cast<std::size_t>(stream.gcount()));
    }
    return text;
}

/// Rules and descriptions, and the tables of norms.
bool has_text(std::string_view name) { return name.ends_with(".yaml") || name.ends_with(".csv"); }

/// A file of a folder, named from there, that is not one of a released version of the book in it.
bool belongs(std::string_view name, std::string_view below) {
    return has_text(name) && !below.starts_with(releases_folder);
}

void cannot_read(std::string const& path, std::string_view why, Diagnostics& diagnostics) {
    diagnostics.error("cannot-read", {make_source(path, ""), 0, 0},
                      fmt::format("the file cannot be read: {}", why));
}

}  // namespace

bool named_csv(std::string const& path) {
    return path.ends_with(".csv") || path.ends_with(".csv.gz");
}

SourcePtr read_source(std::string const& path, Diagnostics& diagnostics) {
    if (path == "-") return make_source("<stdin>", read_up_to_limit(std::cin));
    std::error_code error;
    if (fs::is_directory(path, error)) {
        cannot_read(path, "it is a folder", diagnostics);
        return nullptr;
    }
    std::ifstream stream(path, std::ios::binary);
    if (!stream) {
        cannot_read(path, std::strerror(errno), diagnostics);
        return nullptr;
    }
    return make_source(path, read_up_to_limit(stream));
}

std::vector<SourcePtr> read_folder(std::string const& folder, Diagnostics& diagnostics) {
    std::error_code error;
    std::vector<std::string> paths;
    for (auto it = fs::recursive_directory_iterator(folder, error);
         !error && it != fs::recursive_directory_iterator(); it.increment(error)) {
        auto const& path = it->path();
        bool const wanted =
            it->is_regular_file() &&
            belongs(path.string(), path.lexically_relative(folder).generic_string());
        if (wanted) paths.push_back(path.string());
    }
    if (error || paths.empty())
        cannot_read(folder, error ? error.message() : "it holds no .yaml file", diagnostics);
    std::sort(paths.begin(), paths.end());
    std::vector<SourcePtr> sources;
    for (auto const& path : paths) {
        if (auto source = read_source(path, diagnostics)) sources.push_back(std::move(source));
    }
    return sources;
}

std::vector<SourcePtr> embedded_sources(std::string const& prefix) {
    std::vector<SourcePtr> sources;
    for (auto const& file : embedded::files()) {
        bool const wanted =
            file.name.starts_with(prefix) && belongs(file.name, file.name.substr(prefix.size()));
        if (wanted) sources.push_back(make_source(std::string(file.name), std::string(file.text)));
    }
    return sources;
}

}  // namespace asterism::cli
