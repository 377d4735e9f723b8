// SPDX-License-Identifier: MIT
#include "batch/line_reader.h"

#include <array>
#include <bit>
#include <cstring>

#include <simdjson.h>

#include "base/number.h"
#include "batch/meanings.h"
#include "batch/plain_statements.h"

namespace asterism::batch {

namespace {

namespace od = simdjson::ondemand;

/// Takes a result's value; false on an error.
template <class Result, class T>
bool take(Result&& result, T& value) {
    return std::forward<Result>(result).get(value) == simdjson::SUCCESS;
}

/// The value of a result that is no error, where it is: copies of what was just written are slow.
template <class Result>
auto& inside(Result& result) {
    auto&& value = std::move(result).value_unsafe();
    return value;
}

/// The text between the quotes as it stands there: whoever takes it for more than a known word has
/// to look for escapes. The parser has checked UTF-8, control characters and the closing quote.
bool text_of(od::value& value, std::string_view& text) {
    auto token = value.raw_json_token();
    od::raw_json_string raw;
    if (!take(value.get_raw_json_string(), raw)) return false;
    while (token.back() != '"') token.remove_suffix(1);
    if (token.size() < 3) return false;
    text = token.substr(1, token.size() - 2);
    return true;
}

bool escaped(std::string_view text) { return text.find('\\') != std::string_view::npos; }

/// A key of objects, compared with what stands behind a quote sixteen bytes at a time; the
/// padding of lines makes that many readable.
class Key {
public:
    template <std::size_t n>
    constexpr Key(char const (&name)[n]) {
        static_assert(n <= 16);
        for (std::size_t i = 0; i < n; ++i) {
            auto const c = static_cast<unsigned char>(i + 1 < n ? name[i] : '"');
            words_[i / 8] |= static_cast<std::uint64_t>(c) << i % 8 * 8;
            masks_[i / 8] |= 0xFFull << i % 8 * 8;
        }
    }
    /// Whether a key is this very name, without escapes.
    bool is(od::raw_json_string key) const {
        std::array<std::uint64_t, 2> words{};
        std::memcpy(words.data(), key.raw(), sizeof words);
        return (((words[0] ^ words_[0]) & masks_[0]) | ((words[1] ^ words_[1]) & masks_[1])) == 0;
    }

private:
    std::array<std::uint64_t, 2> words_{};
    std::array<std::uint64_t, 2> masks_{};
};
static_assert(std::endian::native == std::endian::little);

/// Calls `visit` with each element; false when that or the reading fails.
template <class Visit>
bool each(od::array& list, Visit visit) {
    for (auto element : list) {
        if (element.error() != simdjson::SUCCESS || !visit(inside(element))) return false;
    }
    return true;
}

/// One text or a list of texts.
template <class Visit>
bool each_text(od::value& value, Visit visit) {
    od::json_type type{};
    std::string_view text;
    if (!take(value.type(), type)) return false;
    if (type == od::json_type::string) return text_of(value, text) && visit(text);
    od::array list;
    return take(value.get_array(), list) &&
           each(list, [&](od::value& item) { return text_of(item, text) && visit(text); });
}

/// Calls `visit` with each key and value of an object; false when that or the reading fails, or
/// when a key of the `keys` comes twice or is none of them.
template <std::size_t n, class Visit>
bool each_field(od::object& object, std::array<Key, n> const& keys, Visit visit) {
    unsigned seen = 0;
    std::size_t key = n - 1;
    for (auto entry : object) {
        if (entry.error() != simdjson::SUCCESS) return false;
        auto& field = inside(entry);
        auto const name = field.key();
        // Writers keep to one order, so the next key is the best guess.
        std::size_t tried = 0;
        do {
            key = key + 1 == n ? 0 : key + 1;
        } while (!keys[key].is(name) && ++tried < n);
        if (tried == n || (seen >> key & 1u) != 0) return false;
        seen |= 1u << key;
        if (!visit(key, field.value())) return false;
    }
    return true;
}

bool read_sides(std::string_view text, Sides& sides) {
    if (text == "left") return sides = Sides::left, true;
    if (text == "right") return sides = Sides::right, true;
    if (text == "both" || text == "bilateral") return sides = Sides::both, true;
    return false;
}

}  // namespace

class LineReader::Reading {
public:
    explicit Reading(Ontology const& ontology)
        : ontology_(ontology), meanings_(ontology), statements_(ontology) {}

    bool read(std::string_view line, FastCase& baby) {
        baby.clear();
        born_.reset();
        examined_on_.reset();
        baby_ = &baby;
        od::document document;
        od::object object;
        if (!take(parser_.iterate(line.data(), line.size(), line.size() + padding()), document) ||
            !take(document.get_object(), object) ||
            !each_field(object, keys,
                        [&](auto key, od::value& value) { return (this->*readers[key])(value); }))
            return false;
        bool const at_end = document.current_location().error() == simdjson::OUT_OF_BOUNDS;
        bool const reversed = born_ && examined_on_ && *examined_on_ < *born_;
        return at_end && !reversed && statements_.plain(baby);
    }

private:
    using Field = bool (Reading::*)(od::value&);

    /// A code, in quotes or as a bare number whose digits are kept as written.
    bool id(od::value& value) {
        od::json_type type{};
        std::string_view text;
        double number = 0;
        if (!take(value.type(), type)) return false;
        if (type == od::json_type::number) {
            text = trim(value.raw_json_token());
            if (!take(value.get_double(), number)) return false;
        } else if (type != od::json_type::string || !text_of(value, text) || escaped(text)) {
            return false;
        }
        baby_->id.assign(text);
        return true;
    }

    bool sex(od::value& value) {
        std::string_view text;
        if (!text_of(value, text)) return false;
        for (auto const sex : {Sex::female, Sex::male, Sex::undetermined}) {
            if (text == to_text(sex)) return baby_->sex = sex, true;
        }
        return false;
    }

    bool gestation(od::value& value) {
        std::string_view text;
        auto const* known = text_of(value, text) ? meanings_.gestation(text) : nullptr;
        if (known) baby_->gestation = *known;
        return known != nullptr;
    }

    bool age(od::value& value) {
        std::string_view text;
        auto const* known = text_of(value, text) ? meanings_.duration(text) : nullptr;
        if (known) baby_->age = *known;
        return known != nullptr;
    }

    bool date(od::value& value, std::optional<Date>& target) {
        std::string_view text;
        auto const* known = text_of(value, text) ? meanings_.date(text) : nullptr;
        if (known) target = *known;
        return known != nullptr;
    }

    bool born(od::value& value) { return date(value, born_); }
    bool examined_on(od::value& value) { return date(value, examined_on_); }

    bool examined(od::value& value) {
        od::json_type type{};
        std::string_view text;
        exceptions_.clear();
        if (!take(value.type(), type)) return false;
        if (type == od::json_type::string) return text_of(value, text) && done(text);
        od::array list;
        if (!take(value.get_array(), list)) return false;
        bool const fine = each(list, [&](od::value& item) {
            od::json_type kind{};
            if (!take(item.type(), kind)) return false;
            if (kind == od::json_type::string) return text_of(item, text) && done(text);
            return except(item);
        });
        for (auto const& set : exceptions_) baby_->steps.remove(set);
        return fine;
    }

    bool done(std::string_view name) {
        auto const* set = meanings_.steps(name);
        if (set) baby_->steps.add(*set);
        return set != nullptr;
    }

    /// Exceptions come last wherever they stand.
    bool except(od::value& item) {
        static constexpr std::array<Key, 1> only{"except"};
        od::object object;
        return take(item.get_object(), object) &&
               each_field(object, only, [&](std::size_t, od::value& value) {
                   return each_text(value, [&](std::string_view name) {
                       auto const* set = meanings_.exceptions(name);
                       if (set) exceptions_.push_back(*set);
                       return set != nullptr;
                   });
               });
    }

    bool list(od::value& value, Stated stated) {
        od::array list;
        return take(value.get_array(), list) &&
               each(list, [&](od::value& item) { return statement(item, stated); });
    }

    bool findings(od::value& value) { return list(value, Stated::present); }
    bool absent(od::value& value) { return list(value, Stated::absent); }
    bool unsure(od::value& value) { return list(value, Stated::unsure); }

    bool statement(od::value& item, Stated stated) {
        od::json_type type{};
        FastStatement result;
        result.stated = stated;
        if (!take(item.type(), type)) return false;
        if (type == od::json_type::string) {
            std::string_view name;
            auto const* known = text_of(item, name) ? meanings_.finding(name) : nullptr;
            if (!known) return false;
            result.finding = *known;
        } else if (!qualified(item, result)) {
            return false;
        }
        baby_->statements.push_back(result);
        return true;
    }

    /// The very text of an object means what it meant before.
    bool qualified(od::value& item, FastStatement& result) {
        od::object object;
        std::string_view text;
        if (!take(item.get_object(), object) || !take(object.raw_json(), text)) return false;
        auto& table = qualified_[std::countr_zero(static_cast<unsigned>(result.stated))];
        if (auto const* known = table.find(text)) return result = *known, true;
        bool more = false;
        if (!take(object.reset(), more) || !read_qualified(object, result)) return false;
        table.add(text, result);
        return true;
    }

    bool read_qualified(od::object& object, FastStatement& result) {
        static constexpr std::array<Key, 4> parts{"finding", "side", "grade", "familial"};
        FindingId const* known = nullptr;
        std::string_view grade;
        bool const fine = each_field(object, parts, [&](std::size_t part, od::value& value) {
            std::string_view text;
            if (part == 3) return take(value.get_bool(), result.familial);
            if (!text_of(value, text)) return false;
            if (part == 1) return read_sides(text, result.sides);
            if (part == 2) return grade = text, true;
            known = meanings_.finding(text);
            if (known) result.finding = *known;
            return known != nullptr;
        });
        if (!fine || !known || (result.familial && result.stated != Stated::present)) return false;
        auto const& finding = ontology_.at(result.finding);
        if (result.sides != Sides::not_said && finding.laterality != Laterality::paired)
            return false;
        return grade.empty() || read_grade(finding, grade, result.grade);
    }

    static bool read_grade(Finding const& finding, std::string_view text, std::uint32_t& grade) {
        for (grade = 0; grade < finding.grades.size(); ++grade) {
            if (finding.grades[grade].text == text) return true;
        }
        return false;
    }

    bool measures(od::value& value) {
        od::object object;
        if (!take(value.get_object(), object)) return false;
        for (auto entry : object) {
            od::field field;
            std::string_view name, text;
            if (!take(std::move(entry), field) || !take(field.unescaped_key(), name) ||
                !text_of(field.value(), text))
                return false;
            auto const* known = meanings_.measure(name, text);
            if (!known) return false;
            for (auto const& other : baby_->measures) {
                if (other.measure == known->measure) return false;
            }
            baby_->measures.push_back(*known);
        }
        return true;
    }

    /// `none`, or items; all of them are present.
    bool history(od::value& value) {
        od::json_type type{};
        if (!take(value.type(), type)) return false;
        auto const first = baby_->statements.size();
        if (type == od::json_type::string) {
            std::string_view text;
            if (!text_of(value, text)) return false;
            if (text == "none") return baby_->history_none = true;
            auto const* known = meanings_.finding(text);
            if (!known) return false;
            FastStatement one;
            one.finding = *known;
            baby_->statements.push_back(one);
        } else if (type != od::json_type::array || !findings(value)) {
            return false;
        }
        for (auto i = first; i < baby_->statements.size(); ++i) {
            auto const& statement = baby_->statements[i];
            if (statement.familial || !ontology_.region_of(statement.finding).history) return false;
        }
        return true;
    }

    bool decisions(od::value& value) {
        static constexpr std::array<Key, 2> parts{"referred", "on"};
        od::object object;
        std::optional<Date> on;
        return take(value.get_object(), object) &&
               each_field(object, parts, [&](std::size_t part, od::value& item) {
                   if (part == 1) return date(item, on);
                   od::array list;
                   std::string_view text;
                   return take(item.get_array(), list) && each(list, [&](od::value& service) {
                              return text_of(service, text) && !escaped(text);
                          });
               });
    }

    static constexpr std::array<Key, 13> keys{
        "case",     "sex",    "gestation", "age",     "born",     "examined-on", "examined",
        "findings", "absent", "unsure",    "history", "measures", "decisions"};
    static constexpr std::array<Field, 13> readers{
        &Reading::id,       &Reading::sex,         &Reading::gestation, &Reading::age,
        &Reading::born,     &Reading::examined_on, &Reading::examined,  &Reading::findings,
        &Reading::absent,   &Reading::unsure,      &Reading::history,   &Reading::measures,
        &Reading::decisions};

    Ontology const& ontology_;
    Meanings meanings_;
    PlainStatements statements_;
    std::array<TextTable<FastStatement>, 3> qualified_;  ///< by Stated
    od::parser parser_;
    FastCase* baby_ = nullptr;
    std::optional<Date> born_;
    std::optional<Date> examined_on_;
    std::vector<StepSet> exceptions_;
};

std::size_t LineReader::padding() { return simdjson::SIMDJSON_PADDING; }

LineReader::LineReader(Ontology const& ontology) : reading_(std::make_unique<Reading>(ontology)) {}
LineReader::~LineReader() = default;

bool LineReader::read(std::string_view line, FastCase& baby) { return reading_->read(line, baby); }

}  // namespace asterism::batch
