// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include <boost/program_options.hpp>

namespace asterism::cli {

/// Wrong use of the command line; the message goes to stderr and the exit status is `usage`.
struct UsageError : std::runtime_error {
    using std::runtime_error::runtime_error;
};

/// The options of one verb: a thin layer over Boost.Program_options without its guessing of
/// abbreviations.
class Options {
public:
    /// `examples` open the help; each is a command and a line of explanation.
    Options(std::string verb, std::string examples);

    Options& flag(char const* name, char const* doc);
    Options& value(char const* name, char const* placeholder, char const* doc);
    Options& list(char const* name, char const* placeholder, char const* doc);
    /// Positional arguments; `many` when more than one may be given.
    Options& positional(char const* name, bool many, char const* doc);
    Options& common();  ///< --rulebook, --ontology, --log, --help

    /// Throws UsageError, with the nearest known option for an unknown one.
    void parse(std::vector<std::string> const& arguments);

    bool has(std::string const& name) const { return values_.count(name) > 0; }
    std::string get(std::string const& name, std::string const& fallback = {}) const;
    std::vector<std::string> all(std::string const& name) const;
    /// A whole number from `least` to `most`, which any other text is not; `fallback` without one.
    std::uint64_t whole(std::string const& name, std::uint64_t fallback, std::uint64_t least,
                        std::uint64_t most) const;
    /// What --jobs says: from 1 to 256 threads; all cores without it.
    unsigned jobs() const;
    /// The value of --format, which must be one of those offered; the first is the default.
    std::string format(std::vector<std::string> const& offered) const;
    std::string help() const;

private:
    [[noreturn]] void unknown(std::string const& typed) const;

    std::string verb_;
    std::string examples_;
    boost::program_options::options_description shown_;
    boost::program_options::options_description hidden_;
    boost::program_options::positional_options_description positional_;
    boost::program_options::variables_map values_;
};

/// Throws a UsageError that names the nearest format, or all of them.
[[noreturn]] void refuse_format(std::string const& wanted, std::vector<std::string> const& offered);

}  // namespace asterism::cli
