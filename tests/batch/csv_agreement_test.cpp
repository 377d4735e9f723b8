// SPDX-License-Identifier: MIT
/// CSV has two readers: of files read whole (`convert`, `assess --input csv`) and of streams
/// (`assess --batch`). On random files, sound and damaged, they accept and refuse the same ones and
/// read the same cases. ASTERISM_CSV_FILES says how many files, ASTERISM_SEED which.
#include "testing.h"

#include <cstdlib>
#include <cstring>
#include <map>
#include <random>

#include <fmt/format.h>

#include "batch/csv_lines.h"
#include "cases/csv_cases.h"
#include "cases/read_case.h"
#include "oracle/case_text.h"
#include "oracle/random_cases.h"
#include "oracle/small_books.h"
#include "oracle/small_world.h"
#include "yaml/read.h"

namespace asterism::batch {

namespace {

using Random = std::mt19937_64;

/// The cases as one text, or why there are none.
struct Read {
    bool accepted = true;
    std::string cases;
    std::string problems;
};

std::string text_of(Case const& baby, Ontology const& ontology) {
    auto text = fmt::format("case {}\n{}", baby.id.text, oracle::case_text(baby, ontology));
    if (baby.decisions) {
        text += "referred";
        for (auto const& service : baby.decisions->referred) text += " " + service.text;
        if (baby.decisions->on) text += " on " + to_text(*baby.decisions->on);
    }
    if (baby.born) text += " born " + to_text(*baby.born);
    if (baby.examined_on) text += " examined on " + to_text(*baby.examined_on);
    return text + "\n";
}

Read whole(std::string const& text, Ontology const& ontology) {
    Diagnostics diagnostics;
    Read result;
    auto const cases = read_csv_cases(make_source("x.csv", text), {ontology}, diagnostics);
    for (auto const& one : cases) result.cases += text_of(one.baby, ontology);
    for (auto const& problem : diagnostics.sorted())
        result.problems += problem.code + ": " + problem.message + "\n";
    result.accepted = !diagnostics.has_errors();
    return result;
}

/// Gives the text in pieces of odd sizes, as pipes do.
ReadBytes pieces_of(std::string const& text, std::size_t most) {
    return [&text, most, at = std::size_t{0}](char* to, std::size_t size) mutable {
        auto const n = std::min({size, most, text.size() - at});
        std::memcpy(to, text.data() + at, n);
        at += n;
        return std::optional(n);
    };
}

void read_block(Block const& block, Ontology const& ontology, Read& result) {
    for (auto const& problem : block.problems) {
        result.accepted = false;
        result.problems += problem.code + ": " + problem.message + "\n";
    }
    auto text = block.text();
    while (!text.empty()) {
        auto const end = text.find('\n');
        Diagnostics diagnostics;
        auto const node =
            yaml::read_json(make_source("x", std::string(text.substr(0, end))), diagnostics);
        if (node) result.cases += text_of(read_case(*node, ontology, diagnostics), ontology);
        for (auto const& problem : diagnostics.sorted())
            result.problems += problem.code + ": " + problem.message + "\n";
        if (diagnostics.has_errors()) result.accepted = false;
        text.remove_prefix(end + 1);
    }
}

Read streamed(std::string const& text, std::size_t piece, Ontology const& ontology) {
    Read result;
    auto const source = csv_lines(pieces_of(text, piece));
    Block block;
    while (source->next(block)) read_block(block, ontology, result);
    if (!source->failure().empty()) result.accepted = false;
    result.problems += source->failure();
    return result;
}

/// Files that are mostly right, with every part of the dialect and everything that goes wrong.
class FileMaker {
public:
    FileMaker(Ontology const& ontology, std::uint64_t seed) : ontology_(ontology), random_(seed) {}

    std::string make() {
        long_form_ = chance(0.4);
        faulty_ = chance(0.4);
        end_ = pick({"\n", "\n", "\r\n", "\r"});
        auto const columns = header();
        auto text = chance(0.1) ? std::string("\xEF\xBB\xBF") : std::string();
        text += line(columns);
        auto const rows = faulty_ ? below(6) : 1 + below(5);
        for (std::size_t i = 0; i < rows; ++i) text += row(columns, i);
        if (chance(0.2)) text.resize(text.size() - std::strlen(end_));
        if (faulty_ && chance(0.3)) damage(text);
        return text;
    }

private:
    std::size_t below(std::size_t n) { return random_() % n; }
    bool chance(double p) { return std::uniform_real_distribution<>()(random_) < p; }
    char const* pick(std::vector<char const*> const& list) { return list[below(list.size())]; }

    std::vector<std::string> header() {
        auto const& known = long_form_ ? csv_long_columns() : csv_columns();
        std::vector<std::string> columns;
        for (auto const name : known) {
            if (chance(0.6) || (long_form_ && name == "finding")) columns.emplace_back(name);
        }
        if (columns.empty()) columns.emplace_back("findings");
        std::shuffle(columns.begin(), columns.end(), random_);
        if (faulty_ && chance(0.1))
            columns.emplace_back(pick({"fidnings", "case", " sex", "", "weight"}));
        return columns;
    }

    std::string quoted(std::string const& cell) {
        bool const must = cell.find_first_of(",\"\r\n") != std::string::npos;
        if (!must && chance(0.85)) return chance(0.1) ? " " + cell + "  " : cell;
        std::string text = "\"";
        for (auto const c : cell) text += c == '"' ? std::string("\"\"") : std::string(1, c);
        return text + '"';
    }

    std::string line(std::vector<std::string> const& cells) {
        std::string text;
        for (std::size_t i = 0; i < cells.size(); ++i) text += (i ? "," : "") + quoted(cells[i]);
        return text + end_;
    }

    std::string row(std::vector<std::string> const& columns, std::size_t number) {
        if (chance(0.05)) return std::string(pick({"", "  ", "\t"})) + end_;
        std::vector<std::string> cells;
        for (auto const& column : columns) cells.push_back(cell(column, number));
        if (long_form_) of_one_case(columns, number, cells);
        if (faulty_ && chance(0.1)) cells.emplace_back("more");
        return line(cells);
    }

    static bool of_finding(std::string const& column) {
        static std::vector<std::string> const names{"finding", "state", "side", "grade",
                                                    "familial"};
        return std::find(names.begin(), names.end(), column) != names.end();
    }

    /// Makes rows of a case agree on the baby and speak of no finding where there is none, but for
    /// what goes wrong.
    void of_one_case(std::vector<std::string> const& columns, std::size_t number,
                     std::vector<std::string>& cells) {
        auto const named = std::find(columns.begin(), columns.end(), "case") != columns.end();
        auto const at = std::find(columns.begin(), columns.end(), "finding") - columns.begin();
        bool const none = cells[static_cast<std::size_t>(at)].empty();
        if (number == 0 || (named && number % 2 == 0)) said_.clear();
        for (std::size_t i = 0; i < columns.size(); ++i) {
            if (columns[i] == "case" || (faulty_ && chance(0.05))) continue;
            if (of_finding(columns[i])) {
                if (none) cells[i].clear();
            } else if (auto const [known, is_new] = said_.emplace(columns[i], cells[i]); !is_new) {
                if (known->second.empty()) known->second = cells[i];
                cells[i] = chance(0.5) ? "" : known->second;
            }
        }
    }

    /// Any finding when the file may be faulty, else one that the column takes.
    Finding const& some_finding(bool history) {
        while (true) {
            auto const& one = ontology_.findings[below(ontology_.findings.size())];
            if (faulty_ || one.history == history) return one;
        }
    }

    std::string finding(bool history = false) {
        if (faulty_ && chance(0.1)) return pick({"low-set eers", "", "\"", "none", "caf\u00e9"});
        auto const& one = some_finding(history);
        return chance(0.5) ? one.id.text : one.label;
    }

    std::string item(bool present, bool history = false) {
        if (faulty_ && chance(0.3))
            return finding() + pick({"; left; right", "; left; left", ";", "; marked",
                                     "; familial; familial", "; Left", ";;right"});
        auto const& one = some_finding(history);
        auto text = chance(0.5) ? one.id.text : one.label;
        if (one.laterality == Laterality::paired) text += pick({"; left", "; right", ";both", ""});
        return text + (present && chance(0.1) ? "; familial" : "");
    }

    std::string items(bool present, bool history = false) {
        auto text = item(present, history);
        while (chance(0.4)) text += pick({"|", " | ", "||"}) + item(present, history);
        return text;
    }

    std::string measures() {
        std::string text = pick({"weight=2610 g", "weight=2.6 kg", "head-circumference=34 cm",
                                 "head-circumference = 33.5 cm"});
        if (faulty_)
            text += pick({"", "|weight=3000 g", "|weight", "|weight=", "|=3", "|weight=3 km"});
        return text;
    }

    std::string cell(std::string const& column, std::size_t number) {
        if (column == "case") return case_id(number);
        if (chance(0.25)) return "";
        if (column == "finding") return finding();
        if (column == "state")
            return pick({"present", "absent", "unsure", faulty_ ? "maybe" : "present"});
        if (column == "side" && !faulty_) return chance(0.1) ? "left" : "";
        if (column == "side") return pick({"left", "right", "both", faulty_ ? "top" : "bilateral"});
        if (column == "grade") return chance(0.9) ? "" : pick({"marked", "mild"});
        if (column == "familial" && !faulty_) return chance(0.3) ? "true" : "";
        if (column == "familial") return pick({"true", "false", faulty_ ? "yes" : "true"});
        if (column == "sex") return pick({"female", "male", faulty_ ? "f" : "female"});
        if (column == "gestation") return pick({"38w2d", "40w0d", faulty_ ? "39" : "41w"});
        if (column == "age") return pick({"26h", "2d", "12 h", faulty_ ? "5" : "3d"});
        if (column == "born" || column == "examined-on" || column == "decided-on")
            return pick({"2031-02-03", "2031-02-04", faulty_ ? "2031-02-30" : "2031-02-05"});
        if (column == "examined")
            return pick(
                {"all", "all|except=hips", "hips", "none", "all,except=eyes", "except=hips"});
        if (column == "history") return chance(0.5) ? "none" : items(true, true);
        if (column == "measures") return measures();
        if (column == "referred")
            return pick({"none", "genetics", "genetics|ent", faulty_ ? "none|genetics" : "ent"});
        return items(column == "findings");
    }

    std::string case_id(std::size_t number) {
        if (faulty_ && chance(0.1)) return pick({"", "a", "b\nc", "007", "1e3", "\"", "true"});
        return fmt::format("{}{}", pick({"case-", "case-", "no. "}),
                           long_form_ ? number / 2 : number);
    }

    void damage(std::string& text) {
        auto const at = below(text.size());
        static std::vector<std::string> const bytes{
            "\"", ",",  "\n", "\r",   std::string(1, '\0'), "\xFF",
            "\\", "\t", "|",  "\x01", "\xE2\x80\xA8"};
        auto const& byte = bytes[below(bytes.size())];
        if (chance(0.5))
            text.insert(at, byte);
        else
            text.replace(at, 1, byte);
    }

    Ontology const& ontology_;
    Random random_;
    bool long_form_ = false;
    bool faulty_ = false;
    std::map<std::string, std::string> said_;  ///< of the baby, in the long form
    char const* end_ = "\n";
};

std::size_t files_wanted() {
    auto const* text = std::getenv("ASTERISM_CSV_FILES");
    return text ? std::strtoull(text, nullptr, 10) : 3000;
}

}  // namespace

TEST_CASE("the two readers of CSV agree on random files") {
    auto const& ontology = *oracle::shipped_book().ontology;
    auto const seed = oracle::seed_from_environment();
    FileMaker maker(ontology, seed);
    std::size_t accepted = 0, refused = 0, cases = 0, failures = 0;
    for (std::size_t i = 0; i < files_wanted() && failures < 5; ++i) {
        auto const text = maker.make();
        auto const one = whole(text, ontology);
        auto const other = streamed(text, 1 + i % 97, ontology);
        ++(one.accepted ? accepted : refused);
        bool const same =
            one.accepted == other.accepted && (!one.accepted || one.cases == other.cases);
        if (one.accepted && !one.cases.empty()) ++cases;
        if (same) continue;
        ++failures;
        FAIL_CHECK(fmt::format("seed {}, file {}:\n{}\n-- whole: {}\n{}{}\n-- streamed: {}\n{}{}",
                               seed, i, text, one.accepted, one.cases, one.problems, other.accepted,
                               other.cases, other.problems));
    }
    MESSAGE(fmt::format("{} files accepted by both, {} refused by both", accepted, refused));
    CHECK(failures == 0);
    CHECK(accepted > files_wanted() / 5);
    CHECK(refused > files_wanted() / 5);
}

}  // namespace asterism::batch
