// SPDX-License-Identifier: MIT
// The one main of every test program. Beyond doctest's own it fails when a filter matches no test
// case or when a test case asserts nothing: both would otherwise pass in silence.
#define DOCTEST_CONFIG_IMPLEMENT
#include "testing.h"

#include <cstdlib>
#include <iostream>
#include <string>

namespace {

// The same number as ASTERISM_SKIPPED in lib/cmake/AsterismTest.cmake.
constexpr int skipped_exit_code = 77;

struct Tally {
    unsigned cases_run = 0;
    unsigned cases_without_assertion = 0;
    unsigned skips = 0;
};
Tally tally;

/// Counts what ran and names each test case that asserted nothing.
class Auditor final : public doctest::IReporter {
public:
    explicit Auditor(doctest::ContextOptions const&) {}

    void test_case_start(doctest::TestCaseData const& data) override {
        current_ = &data;
        skips_before_ = tally.skips;
    }

    void test_case_end(doctest::CurrentTestCaseStats const& stats) override {
        ++tally.cases_run;
        bool const skipped = tally.skips > skips_before_;
        bool const failed = stats.failure_flags != doctest::TestCaseFailureReason::None;
        if (stats.numAssertsCurrentTest == 0 && !skipped && !failed) {
            ++tally.cases_without_assertion;
            std::cerr << current_->m_file.c_str() << ':' << current_->m_line << ": test case `"
                      << current_->m_name << "` asserts nothing\n";
        }
    }

    void report_query(doctest::QueryData const&) override {}
    void test_run_start() override {}
    void test_run_end(doctest::TestRunStats const&) override {}
    void test_case_reenter(doctest::TestCaseData const&) override {}
    void test_case_exception(doctest::TestCaseException const&) override {}
    void subcase_start(doctest::SubcaseSignature const&) override {}
    void subcase_end() override {}
    void log_assert(doctest::AssertData const&) override {}
    void log_message(doctest::MessageData const&) override {}
    void test_case_skipped(doctest::TestCaseData const&) override {}

private:
    doctest::TestCaseData const* current_ = nullptr;
    unsigned skips_before_ = 0;
};
REGISTER_LISTENER("auditor", 1, Auditor);

std::optional<std::filesystem::path> file_below(char const* variable, std::string_view relative) {
    char const* const root = std::getenv(variable);
    if (root == nullptr || *root == '\0') {
        asterism::testing::skip(std::string(variable) + " is not set");
        return std::nullopt;
    }
    std::filesystem::path path = std::filesystem::path(root) / relative;
    REQUIRE_MESSAGE(std::filesystem::exists(path), variable, " is set, but there is no ",
                    path.string());
    return path;
}

int verdict(int doctest_result) {
    if (doctest_result != 0) {
        return doctest_result;
    }
    if (tally.cases_run == 0) {
        std::cerr << "no test case matches\n";
        return 1;
    }
    if (tally.cases_without_assertion > 0) {
        return 1;
    }
    return tally.skips > 0 ? skipped_exit_code : 0;
}

}  // namespace

void asterism::testing::skip(std::string_view reason) {
    ++tally.skips;
    std::cout << "skipped: " << reason << '\n';
}

std::optional<std::filesystem::path> asterism::testing::data_file(std::string_view relative) {
    return file_below("ASTERISM_DATA", relative);
}

std::optional<std::filesystem::path> asterism::testing::facts_file(std::string_view relative) {
    return file_below("ASTERISM_FACTS", relative);
}

int main(int argc, char** argv) {
    doctest::Context context(argc, argv);
    int const result = context.run();
    return context.shouldExit() ? result : verdict(result);
}
