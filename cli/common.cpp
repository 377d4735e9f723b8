// SPDX-License-Identifier: MIT
#include "common.h"

#include <fmt/format.h>
#include <spdlog/spdlog.h>

#include "terminal.h"

namespace asterism::cli {

namespace {

void set_log_level(std::string const& level) {
    if (level == "off") return;
    if (level != "info" && level != "debug")
        throw UsageError(fmt::format("unknown log level `{}`; accepted: off, info, debug", level));
    spdlog::set_level(level == "info" ? spdlog::level::info : spdlog::level::debug);
}

}  // namespace

bool parse_or_help(Options& options, std::vector<std::string> const& arguments) {
    options.parse(arguments);
    if (options.has("help")) {
        print(options.help());
        return true;
    }
    set_log_level(options.get("log", "off"));
    return false;
}

}  // namespace asterism::cli
