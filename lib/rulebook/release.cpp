// SPDX-License-Identifier: MIT
#include "rulebook/release.h"

#include <algorithm>
#include <charconv>

#include <fmt/format.h>

#include "yaml/read.h"

namespace asterism {

namespace {

yaml::Table<Release> release_table() {
    yaml::Table<Release> table("release");
    table.required("version", &Release::version, yaml::word(), "version of the book")
        .required("effective", &Release::effective, yaml::word(), "day from which it is in force")
        .required("sha256", &Release::digest, yaml::word(), "digest of its files");
    return table;
}

bool is_digest(std::string_view text) {
    constexpr std::size_t digits = 64;
    return text.size() == digits &&
           text.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

void check(Release& release, Diagnostics& diagnostics) {
    auto const date = parse_date(release.effective.text);
    if (date) release.date = *date;
    if (!date) diagnostics.error("bad-date", release.effective.span, date.error());
    if (!parse_version(release.version.text)) {
        diagnostics.error(
            "bad-version", release.version.span,
            fmt::format("expected a version such as `1.2.3`, found `{}`", release.version.text));
    }
    if (!is_digest(release.digest.text)) {
        diagnostics.error("bad-digest", release.digest.span,
                          "expected 64 hexadecimal digits in lower case");
    }
}

void check_order(Release const& earlier, Release const& later, Diagnostics& diagnostics) {
    if (parse_version(later.version.text) <= parse_version(earlier.version.text)) {
        diagnostics.error("release-order", later.version.span,
                          fmt::format("version `{}` does not come after `{}`", later.version.text,
                                      earlier.version.text),
                          "releases stand oldest first, each once");
    }
    if (later.date <= earlier.date) {
        diagnostics.error(
            "release-order", later.effective.span,
            fmt::format("`{}` is not later than `{}`, the day of version `{}`",
                        later.effective.text, earlier.effective.text, earlier.version.text));
    }
}

std::string_view shared_folder(std::vector<SourcePtr> const& files) {
    if (files.empty()) return {};
    std::string_view shared = files.front()->name();
    for (auto const& file : files) {
        auto const [end, other] =
            std::mismatch(shared.begin(), shared.end(), file->name().begin(), file->name().end());
        shared = shared.substr(0, static_cast<std::size_t>(end - shared.begin()));
    }
    auto const slash = shared.rfind('/');
    return slash == std::string_view::npos ? std::string_view() : shared.substr(0, slash + 1);
}

}  // namespace

yaml::Table<ReleaseList> const& release_list_table() {
    static auto const table = [] {
        yaml::Table<ReleaseList> list("list of releases");
        list.required("releases", &ReleaseList::releases, yaml::list_of(release_table().reader()),
                      "released versions, oldest first");
        return list;
    }();
    return table;
}

std::vector<Release> read_releases(SourcePtr const& list, Diagnostics& diagnostics) {
    Diagnostics problems;
    ReleaseList result;
    auto const node = yaml::read_yaml(list, problems);
    if (node) release_list_table().read(*node, result, problems);
    if (!problems.has_errors()) {
        for (auto& release : result.releases) check(release, problems);
    }
    if (!problems.has_errors()) {
        for (std::size_t i = 1; i < result.releases.size(); ++i) {
            check_order(result.releases[i - 1], result.releases[i], problems);
        }
    }
    diagnostics.append(problems);
    return problems.has_errors() ? std::vector<Release>{} : std::move(result.releases);
}

std::string release_line(std::string_view version, std::string_view effective,
                         std::string_view digest) {
    return fmt::format("  - {{ version: {}, effective: {}, sha256: {} }}\n", version, effective,
                       digest);
}

std::optional<std::array<int, 3>> parse_version(std::string_view text) {
    std::array<int, 3> numbers{};
    auto const* at = text.data();
    auto const* const end = at + text.size();
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        bool const plain = at != end && *at >= '0' && *at <= '9';
        auto const [next, error] = std::from_chars(at, end, numbers[i]);
        if (!plain || error != std::errc()) return std::nullopt;
        at = next;
        if (i + 1 < numbers.size() && (at == end || *at++ != '.')) return std::nullopt;
    }
    return at == end ? std::optional(numbers) : std::nullopt;
}

std::vector<SourcePtr> files_of_book(std::vector<SourcePtr> const& files) {
    auto const shared = shared_folder(files).size();
    std::vector<SourcePtr> kept;
    for (auto const& file : files) {
        auto const below = std::string_view(file->name()).substr(shared);
        bool const other = below.starts_with(releases_folder) || below.ends_with(".md");
        if (!other) kept.push_back(file);
    }
    return kept;
}

}  // namespace asterism
