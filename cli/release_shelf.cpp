// SPDX-License-Identifier: MIT
#include "release_shelf.h"

#include <filesystem>

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <spdlog/spdlog.h>

#include "embedded/embedded.h"
#include "files.h"

namespace asterism::cli {

namespace {

namespace fs = std::filesystem;

constexpr auto built_in = "rules/newborn/";

/// What is below a place of a folder on disk; nothing when the place does not exist.
std::vector<SourcePtr> on_disk(std::string const& folder, std::string const& below) {
    Diagnostics unread;  // a file that vanished under our hands shows as a missing one
    auto const path = below.empty() ? fs::path(folder) : fs::path(folder) / below;
    std::error_code error;
    if (fs::is_regular_file(path, error)) return {read_source(path.string(), unread)};
    return fs::is_directory(path, error) ? read_folder(path.string(), unread)
                                         : std::vector<SourcePtr>{};
}

Word argument(std::string const& name, std::string const& value) {
    auto const source = make_source("<arguments>", name + " " + value);
    auto const begin = static_cast<std::uint32_t>(name.size() + 1);
    return {value, {source, begin, static_cast<std::uint32_t>(source->text().size())}};
}

}  // namespace

std::optional<Shelf> open_shelf(std::string const& folder, Diagnostics& diagnostics) {
    if (folder.empty()) {
        return Shelf::open(
            [](std::string const& below) { return embedded_sources(built_in + below); },
            diagnostics);
    }
    if (read_folder(folder, diagnostics).empty()) return std::nullopt;
    return Shelf::open([folder](std::string const& below) { return on_disk(folder, below); },
                       diagnostics);
}

std::shared_ptr<Rulebook const> load_rulebook_of(std::string const& folder, std::string const& day,
                                                 Diagnostics& diagnostics) {
    auto const shelf = open_shelf(folder, diagnostics);
    if (!shelf) return nullptr;
    auto const* const book = in_force(*shelf, argument("--as-of", day), diagnostics);
    if (!book) return nullptr;
    spdlog::info("rulebook: version {}, in force from {}", book->version, to_text(book->effective));
    return shelf->load(*book, diagnostics);
}

std::shared_ptr<Rulebook const> named_book(std::string const& name,
                                           std::optional<Shelf> const& shelf,
                                           Diagnostics& diagnostics) {
    auto const* const version = shelf ? shelf->find(name) : nullptr;
    if (version) return shelf->load(*version, diagnostics);
    std::error_code error;
    if (fs::is_directory(name, error)) return load_rulebook({name, {}, {}, {}}, diagnostics);
    std::vector<std::string> known;
    if (shelf) {
        for (auto const& book : shelf->books()) known.push_back(book.version);
    }
    throw UsageError(fmt::format("`{}` is neither a folder nor a version; versions: {}", name,
                                 fmt::join(known, ", ")));
}

SourcePtr changelog_of(std::string const& folder, Diagnostics& diagnostics) {
    constexpr auto name = "CHANGELOG.md";
    if (folder.empty()) {
        for (auto const& file : embedded::files()) {
            if (file.name == std::string(built_in) + name)
                return make_source(std::string(file.name), std::string(file.text));
        }
        return nullptr;
    }
    auto const path = fs::path(folder) / name;
    std::error_code error;
    return fs::exists(path, error) ? read_source(path.string(), diagnostics) : nullptr;
}

}  // namespace asterism::cli
