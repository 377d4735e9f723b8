// SPDX-License-Identifier: MIT
#include <filesystem>
#include <fstream>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "book.h"
#include "common.h"
#include "exit_code.h"
#include "files.h"
#include "release_shelf.h"
#include "render/diagnostics_text.h"
#include "render/json.h"
#include "review/check.h"
#include "review/rehearse.h"
#include "rulebook/release_ready.h"
#include "terminal.h"
#include "verb.h"

namespace asterism::cli {

namespace {

namespace fs = std::filesystem;

constexpr auto schema = "asterism.release/1";

Options make_options() {
    Options options(
        "release",
        "  asterism release                        every version of the built-in book\n"
        "  asterism release rules/newborn          release the book in a folder as it stands\n"
        "  asterism release rules/newborn --dry-run    only say whether it could be\n");
    options.flag("dry-run", "check, and write nothing")
        .value("format", "FORMAT", "text or json")
        .positional(rulebook_folder, false, "the rulebook's folder")
        .common();
    return options;
}

int list(Shelf const& shelf, bool json) {
    nlohmann::ordered_json versions = nlohmann::ordered_json::array();
    std::string text;
    for (auto const& book : shelf.books()) {
        auto const digest = book.release ? book.release->digest.text : std::string();
        versions.push_back({{"version", book.version},
                            {"effective", to_text(book.effective)},
                            {"released", book.release.has_value()},
                            {"sha256", digest.empty() ? nlohmann::ordered_json()
                                                      : nlohmann::ordered_json(digest)}});
        text += fmt::format("{}  in force from {}  {}\n", book.version, to_text(book.effective),
                            digest.empty() ? "not released yet" : "sha256 " + digest);
    }
    print(json ? json_text({{"schema", schema}, {"versions", versions}}) : text);
    return done;
}

std::vector<Release> released_before(fs::path const& folder, Diagnostics& diagnostics) {
    auto const path = folder / release_list_name;
    std::error_code error;
    if (!fs::exists(path, error)) return {};
    auto const source = read_source(path.string(), diagnostics);
    return source ? read_releases(source, diagnostics) : std::vector<Release>{};
}

/// The book, when it is sound and ready; its problems are reported.
std::optional<CompiledRulebook> ready(BookPaths const& paths, Diagnostics& diagnostics) {
    auto const released = released_before(paths.rulebook, diagnostics);
    auto const changelog = changelog_of(paths.rulebook, diagnostics);
    auto const notes =
        changelog ? read_release_notes(changelog, diagnostics) : std::vector<ReleaseNotes>{};
    auto book = load_book(paths, diagnostics);
    if (!book) return std::nullopt;
    check_book(*book, diagnostics);
    report_failed_vignettes(*book, diagnostics);
    check_ready(*book->book, released, notes, diagnostics);
    return book;
}

void write(fs::path const& path, std::string_view text, std::ios::openmode mode = std::ios::trunc) {
    fs::create_directories(path.parent_path());
    std::ofstream stream(path, std::ios::binary | mode);
    stream.write(text.data(), static_cast<std::streamsize>(text.size()));
    if (!stream.flush())
        throw std::runtime_error(fmt::format("{} cannot be written", path.string()));
}

/// Whether a file belongs to what is released: all but vignettes and earlier releases.
bool is_content(fs::path const& below) {
    auto const name = below.generic_string();
    bool const vignette =
        name.starts_with("vignettes/") || name.find("/vignettes/") != std::string::npos;
    return !vignette && !name.starts_with(releases_folder);
}

void freeze(fs::path const& folder, Rulebook const& book, Diagnostics& diagnostics) {
    auto const target = folder / releases_folder / book.header.version;
    for (auto const& source : read_folder(folder.string(), diagnostics)) {
        auto const below = fs::path(source->name()).lexically_relative(folder);
        if (is_content(below)) write(target / below, source->text());
    }
    auto const changelog = changelog_of(folder.string(), diagnostics);
    if (changelog) write(target / "CHANGELOG.md", changelog->text());
    auto const path = folder / release_list_name;
    if (!fs::exists(path))
        write(path, "# Released versions, oldest first. A line never changes.\nreleases:\n");
    auto const list = read_source(path.string(), diagnostics);
    auto const* const line_end = list && !list->text().ends_with('\n') ? "\n" : "";
    write(path,
          line_end + release_line(book.header.version, book.header.effective.text, book.digest),
          std::ios::app);
}

int refuse(Diagnostics const& diagnostics, bool json) {
    return print_problems(diagnostics, schema, json), found_something;
}

/// Reads the release back, as anyone will who asks for the book of that day.
bool holds(std::string const& folder, std::string const& version, Diagnostics& diagnostics) {
    auto const shelf = open_shelf(folder, diagnostics);
    auto const* const book = shelf ? shelf->find(version) : nullptr;
    return book && book->release && shelf->load(*book, diagnostics);
}

}  // namespace

int release_verb(std::vector<std::string> const& arguments) {
    auto options = make_options();
    if (parse_or_help(options, arguments)) return done;
    bool const json = options.format({"text", "json"}) == "json";
    auto const paths = book_paths(options);
    Diagnostics diagnostics;
    if (!options.has(rulebook_folder)) {
        auto const shelf = open_shelf(paths.rulebook, diagnostics);
        return shelf ? list(*shelf, json)
                     : (print_problems(diagnostics, schema, json), invalid_input);
    }
    auto const book = ready(paths, diagnostics);
    if (!book) return print_problems(diagnostics, schema, json), invalid_input;
    if (diagnostics.has_errors()) return refuse(diagnostics, json);
    auto const& header = book->book->header;
    bool const dry = options.has("dry-run");
    if (!dry) {
        freeze(paths.rulebook, *book->book, diagnostics);
        if (!holds(paths.rulebook, header.version, diagnostics)) return refuse(diagnostics, json);
    }
    report(diagnostics_text(diagnostics));
    auto const& digest = book->book->digest;
    print(json ? json_text({{"schema", schema},
                            {"released", !dry},
                            {"version", header.version},
                            {"effective", header.effective.text},
                            {"sha256", digest}})
               : fmt::format("{} {} {}, in force from {}, sha256 {}\n",
                             dry ? "ready to release" : "released", header.id.text, header.version,
                             header.effective.text, digest));
    return done;
}

}  // namespace asterism::cli
