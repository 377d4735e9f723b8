// SPDX-License-Identifier: MIT
#include "options.h"

#include <algorithm>
#include <charconv>
#include <sstream>
#include <thread>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "base/nearest.h"

namespace asterism::cli {

namespace po = boost::program_options;

namespace {

constexpr unsigned line_width = 80;

auto text_value(char const* placeholder) {
    return po::value<std::string>()->value_name(placeholder);
}
auto list_value(char const* placeholder) {
    return po::value<std::vector<std::string>>()->value_name(placeholder)->composing();
}

}  // namespace

Options::Options(std::string verb, std::string examples)
    : verb_(std::move(verb)), examples_(std::move(examples)), shown_("Options", line_width) {}

Options& Options::flag(char const* name, char const* doc) {
    shown_.add_options()(name, doc);
    return *this;
}

Options& Options::value(char const* name, char const* placeholder, char const* doc) {
    shown_.add_options()(name, text_value(placeholder), doc);
    return *this;
}

Options& Options::list(char const* name, char const* placeholder, char const* doc) {
    shown_.add_options()(name, list_value(placeholder), doc);
    return *this;
}

Options& Options::positional(char const* name, bool many, char const* doc) {
    hidden_.add_options()(name, list_value(name), doc);
    positional_.add(name, many ? -1 : 1);
    return *this;
}

Options& Options::common() {
    return value("rulebook", "DIR", "rulebook to use instead of the built-in one")
        .value("ontology", "DIR", "ontology to use instead of the built-in one")
        .value("log", "LEVEL", "the program's own log on stderr: off, info, debug (default off)")
        .flag("help,h", "show this help");
}

void Options::parse(std::vector<std::string> const& arguments) {
    namespace style = po::command_line_style;
    po::options_description all;
    all.add(shown_).add(hidden_);
    try {
        auto const parsed = po::command_line_parser(arguments)
                                .options(all)
                                .positional(positional_)
                                .style(style::unix_style & ~style::allow_guessing)
                                .run();
        po::store(parsed, values_);
        po::notify(values_);
    } catch (po::unknown_option const& problem) {
        unknown(problem.get_option_name());
    } catch (po::too_many_positional_options_error const&) {
        throw UsageError("too many arguments");
    } catch (po::error const& problem) {
        throw UsageError(problem.what());
    }
}

void Options::unknown(std::string const& typed) const {
    std::vector<std::string> names;
    for (auto const& option : shown_.options()) names.push_back("--" + option->long_name());
    auto const help = did_you_mean(typed, names);
    throw UsageError(fmt::format("unknown option `{}`{}{}", typed, help.empty() ? "" : "; ", help));
}

std::string Options::get(std::string const& name, std::string const& fallback) const {
    return has(name) ? values_[name].as<std::string>() : fallback;
}

std::vector<std::string> Options::all(std::string const& name) const {
    return has(name) ? values_[name].as<std::vector<std::string>>() : std::vector<std::string>{};
}

std::uint64_t Options::whole(std::string const& name, std::uint64_t fallback, std::uint64_t least,
                             std::uint64_t most) const {
    if (!has(name)) return fallback;
    auto const text = get(name);
    std::uint64_t value = 0;
    auto const [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size() || value < least || value > most)
        throw UsageError(fmt::format("--{}: expected a whole number from {} to {}, found `{}`",
                                     name, least, most, text));
    return value;
}

unsigned Options::jobs() const {
    constexpr unsigned most = 256;
    auto const cores = std::max(1u, std::thread::hardware_concurrency());
    return static_cast<unsigned>(whole("jobs", std::min(cores, most), 1, most));
}

std::string Options::format(std::vector<std::string> const& offered) const {
    auto const wanted = get("format", offered.front());
    if (std::find(offered.begin(), offered.end(), wanted) != offered.end()) return wanted;
    refuse_format(wanted, offered);
}

void refuse_format(std::string const& wanted, std::vector<std::string> const& offered) {
    auto const help = did_you_mean(wanted, offered);
    throw UsageError(
        fmt::format("unknown format `{}`; {}", wanted,
                    help.empty() ? fmt::format("accepted: {}", fmt::join(offered, ", ")) : help));
}

std::string Options::help() const {
    std::string text = fmt::format("Examples\n{}\n", examples_);
    std::ostringstream options;
    options << shown_;
    return text + options.str();
}

}  // namespace asterism::cli
